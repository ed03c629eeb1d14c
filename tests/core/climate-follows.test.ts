import { expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { climateFollows, climateFollowsInWords } from '@/lib/core/climate-follows'
import { addDays, type Day } from '@/lib/core/day'
import type { Climate } from '@/lib/core/household'
import { modelledHours } from '@/lib/core/modelled-hours'
import { bareHome, COLD, POLAR, TROPICAL } from '../support/plan-of'

const ON = '2026-01-01'
const HOME = bareHome({
  climate: COLD,
  systems: [
    { id: 'main', name: 'Main', delivery: 'ducted', heat: { source: 'gas-furnace' }, cool: { source: 'central-ac' } },
  ],
})

function follows(climate: Climate) {
  return climateFollows(climate, tables, ON)
}

/** Hours a day, over the fortnight that begins on a day, in a home with a furnace and an air conditioner. */
function fortnight(kind: 'heat' | 'cool', from: Day): number {
  return modelledHours(HOME, 'main', { from, to: addDays(from, 13) }, { tables, on: ON })[kind] / 14
}

test('a season’s first and last day are the first and the last from which two weeks need an hour a day', () => {
  const { heating, cooling } = follows(COLD)
  for (const [kind, season] of [
    ['heat', heating],
    ['cool', cooling],
  ] as const) {
    if (!season) throw new Error(`no ${kind} season`)
    const needs = [addDays(season.from, -1), season.from, season.to, addDays(season.to, 1)]
    expect(needs.map((day) => fortnight(kind, day) >= 1)).toEqual([false, true, true, false])
  }
  expect([heating?.from.slice(0, 4), heating?.to.slice(0, 4), cooling?.from.slice(0, 4)]).toEqual([
    '2026',
    '2027',
    '2026',
  ])
})

test('the hours are those of a home with such a furnace and such an air conditioner', () => {
  const year = modelledHours(HOME, 'main', { from: '2026-01-01', to: '2026-12-31' }, { tables, on: ON })
  const { heatHours, coolHours } = follows(COLD)
  expect([heatHours, coolHours]).toEqual([expect.closeTo(year.heat, 6), expect.closeTo(year.cool, 6)])
})

test('in words both seasons are told as one sentence, and a season that never comes as none', () => {
  const heating = { from: '2026-10-03', to: '2027-05-02' }
  const cooling = { from: '2026-06-10', to: '2026-08-31' }
  expect(climateFollowsInWords({ heating, cooling, heatHours: 1087.4, coolHours: 412 })).toBe(
    'Heating season about 3 October to 2 May, about 1,087 heating hours a year; ' +
      'cooling season about 10 June to 31 August, about 412 cooling hours a year.',
  )
  expect(climateFollowsInWords({ heating: null, cooling, heatHours: 0, coolHours: 412 })).toBe(
    'No heating season; cooling season about 10 June to 31 August, about 412 cooling hours a year.',
  )
  expect(climateFollowsInWords(follows(TROPICAL))).toMatch(/^No heating season; cooling season about .+ a year\.$/)
  expect(climateFollowsInWords(follows(POLAR))).toMatch(/^Heating season about .+ a year; no cooling season\.$/)
})
