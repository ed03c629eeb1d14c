import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { spread, textWidth, wrapText } from '@/app/parts/label-layout'
import type { Box, YearDrawing } from '@/app/parts/year-layout'
import { layLying } from '@/app/parts/year-lying'
import { monthHours, type YearFacts, yearMarks } from '@/app/parts/year-marks'
import { layRunning } from '@/app/parts/year-running'
import { addDays } from '@/lib/core/day'
import { crowdedYear, ON, year } from '../support/plan-fixtures'
import { anyYearFacts } from '../support/year-arbitraries'

const layouts = [
  ['lying', layLying],
  ['running', layRunning],
] as const

function facts(more: Partial<YearFacts> = {}): YearFacts {
  return { year, on: ON, names: (subject) => subject, loaded: () => 0.9, ...more }
}

function overlap(a: Box, b: Box): boolean {
  const slack = 0.15 // positions are rounded to tenths
  return (
    a.x + slack < b.x + b.width &&
    b.x + slack < a.x + a.width &&
    a.y + slack < b.y + b.height &&
    b.y + slack < a.y + a.height
  )
}

function clashes({ texts }: YearDrawing): string[] {
  return texts.flatMap((a, index) =>
    texts
      .slice(index + 1)
      .flatMap((b) => (overlap(a.box, b.box) ? [`${a.lines.join(' / ')} × ${b.lines.join(' / ')}`] : [])),
  )
}

function outside({ width, height, ...drawing }: YearDrawing): Box[] {
  const lines = [
    drawing.axis,
    ...drawing.months,
    ...drawing.tracks,
    ...drawing.leaders,
    ...(drawing.today ? [drawing.today] : []),
  ]
  const boxes = [
    ...drawing.texts.map(({ box }) => box),
    ...drawing.bars,
    ...lines.map(({ x1, x2, y1, y2 }) => ({
      x: Math.min(x1, x2),
      y: Math.min(y1, y2),
      width: Math.abs(x2 - x1),
      height: Math.abs(y2 - y1),
    })),
    ...drawing.icons.map(({ x, y }) => ({ x, y, width: 0, height: 0 })),
  ]
  return boxes.filter(
    (box) =>
      !(box.x >= -0.1 && box.y >= -0.1 && box.x + box.width <= width + 0.1 && box.y + box.height <= height + 0.1),
  )
}

describe.each(layouts)('the year, %s', (_, lay) => {
  test('no two labels overlap and everything lies within the drawing, whatever the year holds', () => {
    fc.assert(
      fc.property(anyYearFacts, (any) => {
        const drawing = lay(yearMarks(any), 'today, 25 Nov')
        expect(clashes(drawing)).toEqual([])
        expect(outside(drawing)).toEqual([])
        expect(`${drawing.heat}${drawing.cool}${drawing.loads.join()}`).not.toMatch(/NaN|Infinity/)
      }),
      { numRuns: 150 },
    )
  })

  test('every event and window of the year is drawn and has words', () => {
    const drawing = lay(yearMarks(facts()), 'today, 25 Nov')
    expect(drawing.icons).toHaveLength(year.filters.flatMap(({ events }) => events).length)
    expect(drawing.bars).toHaveLength(year.windows.length)
    const words = drawing.texts.flatMap(({ lines }) => lines).join(' ')
    for (const date of ['12 Sep', '20 Oct', '28 Nov', '3 Aug', '20 Mar – 20 May', 'today, 25 Nov'])
      expect(words).toContain(date)
  })

  test('a crowded year still fits', () => {
    const drawing = lay(yearMarks(facts({ year: crowdedYear })), 'today, 25 Nov')
    expect(clashes(drawing)).toEqual([])
    expect(drawing.icons).toHaveLength(36)
  })

  test('a year without heating, cooling, filters or windows draws no area and no bar', () => {
    const none = Array.from({ length: 365 }, () => 0)
    const bare = { ...year, heatHours: none, coolHours: none, filters: [], windows: [] }
    const drawing = lay(yearMarks(facts({ year: bare })), 'today, 25 Nov')
    expect([drawing.heat, drawing.cool, drawing.bars, drawing.icons]).toEqual(['', '', [], []])
    expect(drawing.texts.some(({ lines }) => lines.includes('Heating'))).toBe(false)
  })

  test('later days lie further along', () => {
    const drawing = lay(yearMarks(facts()), 'today')
    const along = drawing.icons.map(({ x, y }) => (lay === layLying ? x : y))
    expect(along).toEqual([...along].sort((a, b) => a - b))
  })
})

describe('the marks of a year', () => {
  test('today outside the year is not drawn', () => {
    expect(yearMarks(facts({ on: addDays(year.from, 400) })).today).toBeNull()
    expect(yearMarks(facts({ on: addDays(year.from, -1) })).today).toBeNull()
  })

  test('a filter fills from its last change to today, and one that nobody knows does not', () => {
    expect(yearMarks(facts()).lanes[0]?.load).toEqual({ from: 11, to: 85, share: 0.9 })
    expect(yearMarks(facts({ loaded: () => null })).lanes[0]?.load).toBeNull()
  })

  test('the months of the table hold every hour of the year', () => {
    const total = monthHours(year).reduce((sum, { heat }) => sum + heat, 0)
    expect(total).toBeCloseTo(
      year.heatHours.reduce((sum, hours) => sum + hours, 0),
      6,
    )
  })
})

describe('labels', () => {
  test('labels that do not clash stand where they wish', () => {
    expect(
      spread(
        [
          { middle: 20, size: 10 },
          { middle: 50, size: 10 },
        ],
        0,
        100,
      ),
    ).toEqual([15, 45])
  })

  test('labels that clash share the shift', () => {
    expect(
      spread(
        [
          { middle: 50, size: 10 },
          { middle: 50, size: 10 },
        ],
        0,
        100,
      ),
    ).toEqual([40, 50])
  })

  test('labels that cannot fit are refused', () => {
    expect(() => spread([{ middle: 5, size: 11 }], 0, 10)).toThrow(RangeError)
  })

  test('wrapped lines keep every word and the width', () => {
    const lines = wrapText('Clean the ventilator’s outside hoods', 110)
    expect(lines.join(' ')).toBe('Clean the ventilator’s outside hoods')
    for (const line of lines.filter((each) => each.includes(' '))) expect(textWidth(line)).toBeLessThanOrEqual(110)
  })
})
