import { bundled } from './bundled'
import { keepSection, type Row, tableOf } from './table'

const ON = new Date().toISOString().slice(0, 10)

// Each part stands alone: `npm run bench -- planning homes` runs two of them, nothing runs all.
const PARTS: Record<string, () => Promise<{ rows: Row[]; more?: string }>> = {
  planning: async () => ({ rows: await (await bundled<typeof import('./planning')>('planning')).planningRows() }),
  calibration: async () => {
    const { calibration, learningRows } = await bundled<typeof import('./calibration')>('calibration')
    return { rows: learningRows(), more: calibration().join('\n') }
  },
  thermostat: async () => ({ rows: await (await import('./thermostat')).thermostatRows() }),
  sheet: async () => ({ rows: await (await import('./sheet')).sheetRowsMeasured() }),
  guide: async () => ({ rows: await (await import('./guide')).guideRows() }),
  start: async () => ({ rows: await (await import('./start')).startRows() }),
  homes: async () => ({ rows: await (await import('./units')).homesRows() }),
  program: async () => ({ rows: await (await import('./program')).programRows() }),
  calendar: async () => ({ rows: await (await import('./outbound')).feedRows() }),
  pages: async () => ({ rows: await (await import('./pages')).pageRows() }),
  load: async () => ({ rows: await (await import('./load')).loadRows() }),
  faults: async () => ({ rows: await (await import('./faults')).faultRows() }),
  databases: async () => ({ rows: await (await import('./databases')).databasesRows() }),
  lighthouse: async () => ({ rows: await (await import('./lighthouse')).lighthouseRows('phone') }),
  'lighthouse-desk': async () => ({ rows: await (await import('./lighthouse')).lighthouseRows('desk') }),
  digests: async () => ({ rows: await (await import('./outbound')).digestRows() }),
}

const asked = process.argv.slice(2)
const unknown = asked.filter((name) => !PARTS[name])
if (unknown.length > 0) {
  console.error(`no part of the bench: ${unknown.join(', ')}. There are ${Object.keys(PARTS).join(', ')}.`)
  process.exit(2)
}
let misses = 0
for (const [name, run] of Object.entries(PARTS)) {
  if (asked.length > 0 && !asked.includes(name)) continue
  const { rows, more } = await run()
  const text = more === undefined ? tableOf(rows) : `${tableOf(rows)}\n\n${more}`
  console.log(`\n## ${name}\n\n${text}`)
  keepSection(name, text, ON)
  misses += rows.filter(({ meets }) => meets === false).length
}
if (misses > 0) {
  console.log(`\n${misses} of these figures miss their goal.`)
  process.exitCode = 1
}
