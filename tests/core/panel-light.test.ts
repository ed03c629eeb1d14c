import { describe, expect, test } from 'vitest'
import { clampBox, edgeWidth, panelLight } from '@/lib/core/panel-light'
import { fieldOf } from '../support/light-field'

// 18 % of each side is its rim: what is inside begins at 48 and 29, and is 64 by 32.
const BOX = { x: 30, y: 20, width: 100, height: 50 }

describe('the light of a panel', () => {
  test('is that of its inner part, whatever its rim shows', () => {
    const inside = (grow: number) =>
      fieldOf(160, 90, (x, y) => (x >= 48 - grow && x < 112 + grow && y >= 29 - grow && y < 61 + grow ? 0.5 : 0.1))
    expect(panelLight(inside(0), BOX).mean).toBeCloseTo(0.5, 6)
    expect(panelLight(inside(0), BOX)).toMatchObject({ unevenness: 1, slope: 0, clipped: 0 })
    expect(panelLight(inside(0), BOX).error).toBeCloseTo(0, 9)
    expect(panelLight(inside(-1), BOX).mean).toBeLessThan(0.48)
  })

  test('grows to the right by so much a pixel, and is as uneven as its brightest field over its darkest', () => {
    // The fields of the left column end at 69, with which those of the middle begin.
    const found = panelLight(
      fieldOf(160, 90, (x) => (x <= 69 ? 0.4 : 0.6)),
      BOX,
    )
    const [left, middle, right] = [0.4, 0.4 + 0.2 * (21 / 22), 0.6]
    const mean = (left + middle + right) / 3
    const spread = [left, middle, right].reduce((sum, one) => sum + 3 * (one / mean - 1) ** 2, 0)
    expect(found.mean).toBeCloseTo(mean, 6)
    expect(found.unevenness).toBeCloseTo(1.5, 5)
    expect(found.slope).toBeCloseTo(Math.log(1.5) / ((2 / 3) * 64), 6)
    expect(found.error).toBeCloseTo(Math.sqrt(spread / 8) / 3, 6)
    // From above to below it is uneven too, and has no slope to the right.
    const down = panelLight(
      fieldOf(160, 90, (_, y) => (y <= 39 ? 0.4 : 0.6)),
      BOX,
    )
    expect(down.unevenness).toBeCloseTo(1.5, 5)
    expect(down.slope).toBeCloseTo(0, 6)
  })

  test('grows to the right by all three of its rows together', () => {
    const found = panelLight(
      fieldOf(160, 90, (x, y) => (y >= 50 && x > 80 ? 0.8 : 0.4)),
      BOX,
    )
    expect(found.slope * (2 / 3) * 64).toBeCloseTo(Math.log((0.4 + 0.4 + 0.8) / (3 * 0.4)), 1)
  })

  test('says what share of it is too bright to tell', () => {
    const field = fieldOf(160, 90, () => 0.9)
    for (let at = 0; at < field.clipped.length; at++) field.clipped[at] = at % 160 <= 69 ? 1 : 0
    expect(panelLight(field, BOX).clipped).toBeCloseTo((3 + 3 / 22) / 9, 6)
  })

  test('of no light at all is still a number', () => {
    expect(
      panelLight(
        fieldOf(160, 90, () => 0),
        BOX,
      ),
    ).toMatchObject({ mean: 1e-5, unevenness: 1, slope: 0 })
  })
})

describe('the edge of a panel', () => {
  // Ten pixels of slope at either side of a panel from 40 to 100; on it, a fifth lies at 38 and four fifths at 44.
  const slope = (x: number) => Math.min(1, Math.max(0, (x - 35.5) / 10), Math.max(0, (104.5 - x) / 10))
  const scene = (isLit: (y: number) => boolean = () => true, ground = 0.02) =>
    fieldOf(140, 120, (x, y) => (isLit(y) ? ground + (0.5 - ground) * slope(x) : 0))
  const box = { x: 40, y: 0, width: 60, height: 100 }

  test('is as wide as from a fifth of its light to four fifths, as a share of the panel', () => {
    expect(edgeWidth(scene(), box, 0.5, -1)).toBeCloseTo(6 / 60, 9)
    expect(edgeWidth(scene(), box, 0.5, 1)).toBeCloseTo(6 / 60, 9)
  })

  test('is looked for half a panel around it, not at what shines farther off', () => {
    const other = fieldOf(140, 120, (x) => (x < 5 || x > 135 ? 0.5 : 0.02 + 0.48 * slope(x)))
    expect(edgeWidth(other, box, 0.5, -1)).toBeCloseTo(6 / 60, 9)
    expect(edgeWidth(other, box, 0.5, 1)).toBeCloseTo(6 / 60, 9)
  })

  test('is not known where no dark ground is seen, or too few lines cross it', () => {
    expect(edgeWidth(scene(undefined, 0.26), box, 0.5, -1)).toBeNull()
    expect(edgeWidth(scene(undefined, 0.25), box, 0.5, -1)).not.toBeNull()
    // Lines are looked at from 30 to 70, every second one, each with its neighbours.
    expect(
      edgeWidth(
        scene((y) => y >= 29 && y <= 39),
        box,
        0.5,
        -1,
      ),
    ).toBeCloseTo(6 / 60, 9)
    expect(
      edgeWidth(
        scene((y) => y >= 29 && y <= 37),
        box,
        0.5,
        -1,
      ),
    ).toBeNull()
    expect(
      edgeWidth(
        scene((y) => y < 29 || y > 71),
        box,
        0.5,
        -1,
      ),
    ).toBeNull()
    // A panel that never gets as bright as was said has no edge either.
    expect(edgeWidth(scene(), box, 0.7, -1)).toBeNull()
  })

  test('is looked for inside of the picture only', () => {
    const near = { ...box, x: 10 }
    const cut = fieldOf(140, 120, (x) => 0.02 + 0.48 * slope(x + 30))
    expect(edgeWidth(cut, near, 0.5, -1)).toBeCloseTo(6 / 60, 9)
    const last = fieldOf(75, 120, (x) => 0.02 + 0.48 * slope(x + 30))
    expect(edgeWidth(last, near, 0.5, 1)).toBeCloseTo(6 / 60, 9)
    // What shines at the picture's other side lies right after the end of a line, and is not beside the panel.
    const across = fieldOf(75, 120, (x) => (x < 4 ? 0.5 : 0.02 + 0.48 * slope(x + 30)))
    expect(edgeWidth(across, near, 0.5, 1)).toBeCloseTo(6 / 60, 9)
    // Beginning outside of what is seen, from the picture's own edge.
    expect(edgeWidth(cut, { x: -40, y: 0, width: 60, height: 100 }, 0.5, -1)).toBeCloseTo(6 / 60, 9)
  })
})

test('a box is cut to the picture, and is none with less than eight pixels a side', () => {
  const field = fieldOf(100, 60, () => 0)
  const cut = (x: number, y: number, width: number, height: number) => clampBox(field, { x, y, width, height })
  expect(cut(10, 5, 20, 30)).toEqual({ x: 10, y: 5, width: 20, height: 30 })
  expect(cut(-10, -5, 20, 30)).toEqual({ x: 0, y: 0, width: 10, height: 25 })
  expect(cut(90, 50, 20, 30)).toEqual({ x: 90, y: 50, width: 10, height: 10 })
  expect(cut(92, 52, 20, 30)).toEqual({ x: 92, y: 52, width: 8, height: 8 })
  expect(cut(93, 50, 20, 30)).toBeNull()
  expect(cut(90, 53, 20, 30)).toBeNull()
  expect(cut(Number.NaN, 5, 20, 30)).toBeNull()
})
