import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import type { Filter, Household, System } from '@/lib/core/household'
import { plan } from '@/lib/core/plan'
import { assumedInWords } from '@/lib/core/warnings'
import { bareHome, COLD } from '../support/plan-of'

const ON = '2026-11-25'
const MAIN: System = {
  id: 'main',
  name: 'Main',
  delivery: 'ducted',
  heat: { source: 'gas-furnace' },
  cool: { source: 'central-ac', tons: 3 },
  thermostat: { heatSetpointF: 70, coolSetpointF: 75 },
}

function warningsOf(change: Partial<Household>) {
  return plan([bareHome({ climate: COLD, systems: [MAIN], ...change })], tables, ON).households[0]?.warnings ?? []
}

function codesOf(change: Partial<Household>) {
  return warningsOf(change).flatMap(({ code, subject }) => (code.endsWith('-assumed') ? [[code, subject]] : []))
}

function filtersOf(change: Partial<Filter>): Filter[] {
  return bareHome().filters.map((filter) => ({ ...filter, ...change }))
}

describe('what had to be assumed is said', () => {
  test('and nothing else', () => {
    expect(codesOf({})).toEqual([])
    expect(warningsOf({ filters: [] })).toEqual([])
  })

  test('of the airflow, where neither tons nor output is known and a filter stands in it', () => {
    const { cool: _cool, ...unknown } = MAIN
    expect(codesOf({ systems: [unknown] })).toEqual([['airflow-assumed', 'main']])
    const said = (units: Household['units']) => warningsOf({ units, systems: [unknown] })[0]?.say
    expect(said('us')).toContain('not known: 1,000 cubic feet of air a minute (cfm) is assumed.')
    expect(said('metric')).toContain('not known: 1,699 cubic metres of air an hour (m³/h) is assumed.')
    expect(codesOf({ systems: [unknown], filters: [] })).toEqual([])
    expect(codesOf({ systems: [unknown], filters: filtersOf({ place: 'ventilator', medium: 'screen' }) })).toEqual([])
  })

  test('of the set points, where a thermostat is not described and something heats or cools', () => {
    const { thermostat: _thermostat, ...unset } = MAIN
    expect(codesOf({ systems: [unset] })).toEqual([['set-points-assumed', 'main']])
    const said = (units: Household['units']) => warningsOf({ units, systems: [unset] })[0]?.say
    expect(said('us')).toContain('70 °F for heating and 75 °F for cooling')
    expect(said('metric')).toContain('21 °C for heating and 24 °C for cooling')
    const { heat: _heat, cool: _cool, ...bare } = unset
    expect(codesOf({ systems: [{ ...bare, airflowCfm: { cool: 900 } }] })).toEqual([])
    expect(codesOf({ systems: [{ ...bare, cool: { source: 'central-ac', tons: 2 } }] })).toHaveLength(1)
    expect(codesOf({ systems: [{ ...bare, heat: { source: 'gas-furnace', outputBtuh: 60_000 } }] })).toHaveLength(1)
  })

  test('of the rating, where the filter is of a kind that has one', () => {
    expect(codesOf({ filters: filtersOf({ merv: undefined }) })).toEqual([['rating-assumed', 'hall']])
    const deep = { widthIn: 20, heightIn: 25, depthIn: 5 }
    expect(codesOf({ filters: filtersOf({ merv: undefined, medium: 'media', nominal: deep }) })).toHaveLength(1)
    for (const medium of ['fiberglass', 'washable', 'screen'] as const)
      expect(codesOf({ filters: filtersOf({ merv: undefined, medium }) })).toEqual([])
  })

  test('of everything that somebody said they did not know, under what it is about', () => {
    expect(
      codesOf({
        assumed: [
          { code: 'climate', subject: '' },
          { code: 'fan', subject: 'main' },
        ],
      }),
    ).toEqual([
      ['climate-assumed', 'larkspur-2'],
      ['fan-assumed', 'main'],
    ])
    expect(codesOf({ assumed: [{ code: 'fan', subject: 'gone' }] })).toEqual([])
  })
})

describe('an assumption in words', () => {
  const home = bareHome({ systems: [MAIN] })
  const say = (code: Parameters<typeof assumedInWords>[1]['code'], subject: string) =>
    assumedInWords(home, { code, subject })

  test.each([
    ['heat-source', 'main', /^What makes the heat \(Main\) is not known: .*furnace.* is assumed\./],
    ['cool-source', 'main', /^What cools \(Main\) is not known: .* is assumed\./],
    ['delivery', 'main', /^How the heat comes \(Main\)/],
    ['fan', 'main', /^The fan setting \(Main\)/],
    ['filter-place', 'hall', /^Where the filter sits is not known: one .* is assumed\./],
    ['filter-size', 'hall', /^The filter’s size is not known: 16 × 25 × 1.* is assumed\./],
    ['filter-medium', 'hall', /^What kind of filter it is \(.*\) is not known: .*pleated.* is assumed\./],
  ] as const)('of %s names what it is about, and is silent where that is gone', (code, subject, words) => {
    expect(say(code, subject)).toMatch(words)
    expect(say(code, 'gone')).toBeNull()
  })

  test('of the home needs no subject', () => {
    expect(say('climate', '')).toMatch(
      /^The climate is not known: .* assumed\. The nearest place .* degree-days of a year/,
    )
    expect(say('hard-water', '')).toMatch(/hard is assumed/)
    expect(say('vulnerable', '')).toMatch(/that it could is assumed/)
  })

  test('of what makes heat or cold is silent where the system has none', () => {
    const { heat: _heat, cool: _cool, ...bare } = MAIN
    const without = bareHome({ systems: [bare] })
    expect(assumedInWords(without, { code: 'heat-source', subject: 'main' })).toBeNull()
    expect(assumedInWords(without, { code: 'cool-source', subject: 'main' })).toBeNull()
  })
})
