import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { SystemFields } from '@/app/describe/fields/system-fields'

function labels(units: 'us' | 'metric'): string {
  return renderToStaticMarkup(<SystemFields units={units} typed={{}} faults={[]} />)
}

test('a system is asked for in the home’s own degrees and air', () => {
  expect(labels('metric')).toContain('as a technician measured it, cubic metres an hour (m³/h)')
  expect(labels('metric')).not.toMatch(/°F|cfm|cubic feet/)
  expect(labels('us')).toContain('as a technician measured it, cubic feet a minute (cfm)')
  expect(labels('us')).not.toMatch(/°C|m³|metres/)
})
