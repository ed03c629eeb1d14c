import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { Drawing } from '@/app/parts/drawings/drawing'
import { DRAWING_IDS } from '@/lib/guide/drawing-ids'

/** The narrowest a page draws a picture, in CSS pixels. */
const NARROWEST = 280

describe.each(DRAWING_IDS)('the drawing %s', (id) => {
  const svg = renderToStaticMarkup(<Drawing id={id} />)

  test('has a name and a description that its own ids point to', () => {
    const [, titleId, title] = svg.match(/<title id="([^"]+)">([^<]+)<\/title>/) ?? []
    const [, descId, desc] = svg.match(/<desc id="([^"]+)">([^<]+)<\/desc>/) ?? []
    expect(title?.length).toBeGreaterThan(5)
    expect(desc?.length).toBeGreaterThan(30)
    expect(svg).toContain('role="img"')
    expect(svg).toContain(`aria-labelledby="${titleId}"`)
    expect(svg).toContain(`aria-describedby="${descId}"`)
  })

  test('passes a strict policy: no style, script, link or outside file', () => {
    expect(svg).not.toMatch(/style=|<style|<script|href=|url\(|<image|<foreignObject|\son\w+=/)
  })

  test('has no words below 14 pixels where it is drawn narrowest', () => {
    const width = Number(svg.match(/viewBox="0 0 (\d+) /)?.[1])
    for (const [, size] of svg.matchAll(/font-size="([\d.]+)"/g)) {
      expect((Number(size) * NARROWEST) / width).toBeGreaterThanOrEqual(14)
    }
  })

  test('takes its colour from the page, but for the light test, which is about brightness', () => {
    expect(svg).toContain('stroke="currentColor"')
    if (!id.startsWith('light-')) expect(svg).not.toMatch(/#[0-9a-f]{3,8}/i)
  })

  test('keeps its lines and words inside the frame', () => {
    const [width = 0, height = 0] = (svg.match(/viewBox="0 0 (\d+) (\d+)"/) ?? []).slice(1).map(Number)
    for (const [, x, y] of svg.matchAll(/<text x="([\d.-]+)" y="([\d.-]+)"/g)) {
      expect(Number(x)).toBeGreaterThanOrEqual(0)
      expect(Number(x)).toBeLessThanOrEqual(width)
      expect(Number(y)).toBeLessThanOrEqual(height)
    }
    expect(svg).not.toMatch(/NaN|undefined/)
  })
})

test('two drawings on one page do not share ids', () => {
  const page = renderToStaticMarkup(
    <>
      <Drawing id="return-grille" />
      <Drawing id="return-grille" />
    </>,
  )
  const ids = [...page.matchAll(/ id="([^"]+)"/g)].map((match) => match[1])
  expect(ids.length).toBe(4)
  expect(new Set(ids).size).toBe(4)
})

describe('the arrow printed on the filter points the way the air goes', () => {
  test.each([
    ['arrow-ceiling', 'up', 'room', 'duct'],
    ['arrow-floor', 'down', 'room', 'duct'],
    ['arrow-wall', 'right', 'room', 'duct'],
    ['arrow-slot', 'right', 'return duct', 'furnace'],
    ['arrow-media', 'right', 'return duct', 'unit'],
    ['arrow-cabinet', 'up', 'filter', 'fan'],
  ] as const)('%s: %s, from the %s to the %s', (id, way, from, to) => {
    const svg = renderToStaticMarkup(<Drawing id={id} />)
    const arrow = svg.match(/d="M([\d.]+),([\d.]+) L([\d.]+),([\d.]+)" stroke-width="8"/)
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = (arrow ?? []).slice(1).map(Number)
    const ways = { up: y2 < y1 && x1 === x2, down: y2 > y1 && x1 === x2, right: x2 > x1 && y1 === y2 }
    expect(ways[way]).toBe(true)
    // The word it leaves and the word it goes to lie the same way round.
    const word = (text: string) =>
      svg
        .match(new RegExp(`<text x="([\\d.]+)" y="([\\d.]+)"[^>]*>${text}<`))
        ?.slice(1)
        .map(Number)
    const [fromX = 0, fromY = 0] = word(from) ?? []
    const [toX = 0, toY = 0] = word(to) ?? []
    expect(way === 'right' ? toX > fromX : way === 'up' ? toY < fromY : toY > fromY).toBe(true)
  })

  test('air enters a return from the room side and leaves a supply to it', () => {
    for (const [id, sign] of [
      ['return-grille', 1],
      ['supply-register', -1],
    ] as const) {
      const svg = renderToStaticMarkup(<Drawing id={id} />)
      const air = [...svg.matchAll(/d="M([\d.]+),[\d.]+ L([\d.]+),[\d.]+" stroke-dasharray/g)]
      expect(air.length).toBeGreaterThanOrEqual(4)
      for (const [, from, to] of air) expect(Math.sign(Number(to) - Number(from))).toBe(sign)
    }
  })
})
