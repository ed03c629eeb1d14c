import { describe, expect, test } from 'vitest'
import { SAMPLE_DAY, sampleFile } from '@/content/sample'
import { tables } from '@/content/tables'
import { planText } from '@/lib/cli/plan-text'
import { table } from '@/lib/cli/text-table'
import { plan } from '@/lib/core/plan'

const { households } = sampleFile(SAMPLE_DAY)
const made = plan(households, tables, SAMPLE_DAY)

describe('the plan as text', () => {
  test.each([40, 72, 100, 160])('keeps to %d columns and loses nothing that is due', (columns) => {
    const text = planText(made, households, columns)
    const widest = Math.max(...text.split('\n').map((line) => [...line].length))
    expect(widest).toBeLessThanOrEqual(columns)
    const words = text.replace(/\s+/g, ' ')
    for (const { name } of households) expect(words).toContain(name)
    const due = made.households.reduce((sum, { items }) => sum + items.length, 0)
    expect(text.match(/^(?:state: )?(?:Overdue|Due now|Within|Later)/gm)).toHaveLength(due)
  })

  test('a household in which nothing is described says so', () => {
    const [household] = households
    if (!household) throw new Error('no sample')
    const empty = { ...household, systems: [], filters: [], devices: [], records: [], readings: [] }
    expect(planText(plan([empty], tables, SAMPLE_DAY), [empty], 80)).toContain('Nothing is due')
  })
})

describe('a table', () => {
  test('has its columns under each other, long text wrapped at words', () => {
    const long = 'a reason of several words that does not fit on one line of this table'
    expect(
      table(
        ['what', 'why'],
        [
          ['filter', long],
          ['drain', 'short'],
        ],
        60,
      ),
    ).toBe(
      [
        'what    why',
        '------  ----------------------------------------------------',
        'filter  a reason of several words that does not fit on one',
        '        line of this table',
        'drain   short',
      ].join('\n'),
    )
  })

  test('is a list where the screen is narrow, without empty lines for empty cells', () => {
    expect(
      table(
        ['what', 'why'],
        [
          ['filter', ''],
          ['drain', 'wet'],
        ],
        40,
      ),
    ).toBe('what: filter\n\nwhat: drain\nwhy: wet')
  })
})
