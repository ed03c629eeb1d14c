import fc from 'fast-check'
import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { SystemStoryView } from '@/app/parts/story/system-story-view'
import { SAMPLE_DAY, sampleFile } from '@/content/sample'
import { tables } from '@/content/tables'
import { systemStory } from '@/lib/core/home-story'
import type { Household } from '@/lib/core/household'
import { aHousehold } from '../support/a-household'
import { anyCase } from '../support/any-household'

function pages(home: Household, on: string): string[] {
  return home.systems.map(({ id }) => {
    const story = systemStory(home, id, tables, on)
    if (!story) throw new Error('no story')
    return renderToStaticMarkup(<SystemStoryView household={home} story={story} on={on} tables={tables} />)
  })
}

/** What every drawing of the page must hold to. */
function expectSound(page: string): void {
  expect(page).not.toMatch(/NaN|undefined|Infinity|\[object/)
  // A strict policy: no style, script or outside file.
  expect(page).not.toMatch(/style=|<style|<script|<image|<foreignObject|\son\w+=/)
  const ids = [...page.matchAll(/ id="([^"]+)"/g)].map((found) => found[1])
  expect(new Set(ids).size).toBe(ids.length)
  for (const [, name] of page.matchAll(/url\(#([^)]+)\)/g)) expect(ids).toContain(name)
  for (const [svg] of page.matchAll(/<svg class="chart-.*?<\/svg>/gs)) {
    const [width = 0, height = 0] = (svg.match(/viewBox="0 0 ([\d.]+) ([\d.]+)"/) ?? []).slice(1).map(Number)
    expect(svg).toMatch(/role="img"/)
    expect(svg.match(/<desc[^>]*>([^<]+)</)?.[1]?.length).toBeGreaterThan(40)
    for (const [, x, y] of svg.matchAll(/<text [^>]*x="([\d.-]+)" y="([\d.-]+)"/g)) {
      expect(Number(x)).toBeGreaterThanOrEqual(0)
      expect(Number(x)).toBeLessThanOrEqual(width)
      expect(Number(y)).toBeGreaterThan(0)
      expect(Number(y)).toBeLessThanOrEqual(height)
    }
    for (const [, tall] of svg.matchAll(/<rect [^>]*height="([\d.-]+)"/g))
      expect(Number(tall)).toBeGreaterThanOrEqual(0)
  }
}

test('any home’s drawings are whole, named, inside their frames and allowed by a strict policy', () => {
  fc.assert(
    fc.property(anyCase, ({ home, on }) => {
      for (const page of pages(home, on)) expectSound(page)
    }),
    { numRuns: 60 },
  )
})

test('every drawing of the samples has its table, and says in words what it shows', () => {
  for (const home of sampleFile(SAMPLE_DAY).households) {
    for (const page of pages(home, SAMPLE_DAY)) {
      expectSound(page)
      const figures = page.match(/<figure class="chart"/g)?.length ?? 0
      expect(page.match(/<details class="chart-table"/g)?.length ?? 0).toBe(figures)
      expect(page.match(/<figcaption>/g)?.length ?? 0).toBe(figures)
    }
  }
})

test('a filter never recorded, a screen without a loading model and a home without readings or looks are said plainly', () => {
  const [never = ''] = pages(aHousehold({ records: [], readings: [] }), '2026-11-25')
  expect(never).toContain('No change of it was ever recorded')
  expect(never).toContain('Nothing was measured yet')
  expect(never).toContain('Nothing was seen yet')
  expect(never).not.toContain('How full the filter was')
  const heads = sampleFile(SAMPLE_DAY)
    .households.flatMap((home) => pages(home, SAMPLE_DAY))
    .join('')
  expect(heads).toContain('is washed by the calendar')
})

test('what was seen is told by shape: open, half filled, filled', () => {
  const records: Household['records'] = [
    { on: '2026-06-01', kind: 'filter-changed', filter: 'hall' },
    { on: '2026-07-01', kind: 'filter-looked', filter: 'hall', light: 'clear' },
    { on: '2026-08-01', kind: 'filter-looked', filter: 'hall', light: 'half' },
    { on: '2026-09-01', kind: 'filter-changed', filter: 'hall', light: 'dark' },
  ]
  const [page = ''] = pages(aHousehold({ records, readings: [] }), '2026-11-25')
  for (const shape of ['light-clear', 'light-half', 'light-dark']) expect(page).toContain(`class="${shape}"`)
  for (const say of ['light all over', 'light in places', 'hardly any light']) expect(page).toContain(say)
})
