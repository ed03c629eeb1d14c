import { describe, expect, test } from 'vitest'
import { type Box, findPanels, surroundLight } from '@/lib/core/light-panels'
import { fieldOf } from '../support/light-field'

interface Lit extends Box {
  light: number
  /** How far the lower edge lies to the right of the upper one. */
  slant?: number
  isHollow?: boolean
}

function isIn({ x, y, width, height, slant = 0, isHollow }: Lit, px: number, py: number): boolean {
  const [right, down] = [px - x - Math.round(((py - y) / height) * slant), py - y]
  if (right < 0 || right >= width || down < 0 || down >= height) return false
  return !isHollow || right < 8 || right >= width - 8 || down < 8 || down >= height - 8
}

/** What is found in a picture of these, on ground of a light. */
function found(lit: Lit[], { ground = 0.01, width = 240, height = 180 } = {}): readonly [Box, Box] | null {
  return findPanels(fieldOf(width, height, (x, y) => lit.find((one) => isIn(one, x, y))?.light ?? ground))
}

const box = (x: number, y: number, width: number, height: number, light = 0.5): Lit => ({ x, y, width, height, light })
const LEFT = box(40, 50, 60, 80)
const RIGHT = box(130, 50, 70, 80, 0.2)
const places = (lit: Lit[]) => lit.map(({ x, y, width, height }) => expect.objectContaining({ x, y, width, height }))

describe('two panels side by side', () => {
  test('are found where they are, the left one first, whichever is brighter', () => {
    expect(found([LEFT, RIGHT])).toEqual(places([LEFT, RIGHT]))
    expect(found([RIGHT, { ...LEFT, light: 0.05 }])).toEqual(places([LEFT, RIGHT]))
  })

  test('are found in a picture of any size', () => {
    const [left, right] = [box(20, 25, 30, 40), box(65, 25, 35, 40)]
    expect(found([left, right], { width: 120, height: 90 })).toEqual(places([left, right]))
    const [larger, beside] = [box(60, 75, 90, 120), box(195, 75, 105, 120)]
    expect(found([larger, beside], { width: 360, height: 270 })).toEqual(places([larger, beside]))
    // Four columns and two rows more than make whole squares.
    expect(found([larger, beside], { width: 362, height: 272 })).toEqual(places([larger, beside]))
  })

  test('are whole though every second of their points is dark, for pleats and noise are evened out', () => {
    const lit = [LEFT, { ...RIGHT, light: 0.5 }]
    for (const dark of [0, 1]) {
      const isDark = (x: number, y: number) => (x + y) % 2 === dark || !lit.some((one) => isIn(one, x, y))
      expect(findPanels(fieldOf(240, 180, (x, y) => (isDark(x, y) ? 0.01 : 0.5)))).toEqual(places(lit))
    }
  })

  test('may reach the edges of the picture', () => {
    const across = [box(0, 60, 100, 60), box(140, 60, 100, 60)]
    expect(found(across)).toEqual(places(across))
    const down = [box(40, 0, 60, 180), box(130, 0, 70, 180)]
    expect(found(down)).toEqual(places(down))
  })

  test('are each one, whatever slit or slant is in them, and wherever they touch the edges', () => {
    const dark = (x: number, y: number, width: number, height: number) => box(x, y, width, height, 0.01)
    for (const slit of [dark(66, 50, 6, 60), dark(66, 70, 6, 60), dark(40, 86, 50, 6), dark(50, 86, 50, 6)])
      expect([slit, found([slit, LEFT, RIGHT])]).toEqual([slit, places([LEFT, RIGHT])])
    const leaning = [
      { ...box(70, 40, 60, 80), slant: -20 },
      { ...box(150, 40, 60, 80), slant: -20 },
    ]
    expect(found(leaning)?.map(({ width }) => width)).toEqual([80, 80])
    const across = [box(0, 60, 100, 60), box(140, 52, 100, 60)]
    expect(found(across)).toEqual(places(across))
    const under = [box(40, 0, 60, 180), box(100, 0, 10, 20, 0.01), box(130, 0, 70, 180)]
    expect(found(under)).toEqual(places([under[0] as Lit, under[2] as Lit]))
  })

  test('are as large as they are seen at the threshold that shows most of them', () => {
    const halo = (x: number, width: number) => box(x, 40, width, 100, 0.06)
    expect(found([LEFT, { ...RIGHT, light: 0.5 }, halo(30, 80), halo(120, 90)])).toEqual(
      places([halo(30, 80), halo(120, 90)]),
    )
  })

  test('are told apart where their light spills into the gap, up to about three quarters of it', () => {
    const gap = (light: number) => found([LEFT, { ...RIGHT, light: 0.5 }, box(100, 50, 30, 80, light)])
    for (const light of [0.02, 0.1, 0.37]) expect([light, gap(light)]).toEqual([light, places([LEFT, RIGHT])])
    expect(gap(0.4)).toBeNull()
  })

  test('are told from the ground where they are six tenths brighter', () => {
    expect(found([LEFT, { ...RIGHT, light: 0.17 }], { ground: 0.1 })).toEqual(places([LEFT, RIGHT]))
    expect(found([LEFT, { ...RIGHT, light: 0.15 }], { ground: 0.1 })).toBeNull()
  })
})

describe('what is no pair of panels', () => {
  test('is one alone, one above the other, or one much higher', () => {
    expect(found([LEFT])).toBeNull()
    expect(found([box(80, 10, 80, 60), box(80, 100, 80, 60)])).toBeNull()
    expect(found([LEFT, { ...RIGHT, y: 80 }])).toEqual(places([LEFT, { ...RIGHT, y: 80 }]))
    expect(found([LEFT, { ...RIGHT, y: 84 }])).toBeNull()
    expect(found([{ ...LEFT, y: 84 }, RIGHT])).toBeNull()
  })

  test('is two that stand beside one another for six tenths of the lower one’s height, or less', () => {
    const low = box(130, 50, 70, 40)
    // The lower one is 40 high, and ends beside the taller one where that ends at 130: 26 of 40, and 24.
    expect(found([LEFT, { ...low, y: 104 }])).toEqual(places([LEFT, { ...low, y: 104 }]))
    expect(found([LEFT, { ...low, y: 106 }])).toBeNull()
    expect(
      found([
        { ...low, x: 40, y: 106 },
        { ...LEFT, x: 130 },
      ]),
    ).toBeNull()
  })

  test('is of areas that differ by more than two and a half times', () => {
    expect(found([box(20, 50, 100, 80), box(160, 50, 40, 80)])).not.toBeNull()
    expect(found([box(20, 50, 100, 80), box(160, 50, 38, 80)])).toBeNull()
    expect(found([box(20, 50, 38, 80), box(100, 50, 100, 80)])).toBeNull()
  })

  test('is three of like size; a third that is small, or hardly there, does not count', () => {
    const two = [box(20, 20, 60, 80), box(100, 20, 60, 80)]
    expect(found([...two, box(170, 20, 60, 80)])).toBeNull()
    expect(found([...two, box(170, 20, 32, 80)])).toBeNull()
    expect(found([...two, box(170, 20, 30, 80)])).toEqual(places(two))
    expect(found([...two, box(170, 4, 28, 60)])).toEqual(places(two))
    // Less than a fiftieth of the picture is no region: 864 of 43,200 pixels.
    const small = [box(20, 20, 30, 40), box(70, 20, 30, 40)]
    expect(found([...small, box(120, 20, 36, 24)])).toBeNull()
    expect(found([...small, box(120, 20, 20, 40)])).toEqual(places(small))
  })

  test('is a rim of light round something dark', () => {
    expect(found([{ ...LEFT, isHollow: true }, RIGHT])).toBeNull()
    expect(found([LEFT, { ...RIGHT, isHollow: true }])).toBeNull()
  })

  test('is two that lie over one another more than a slant explains', () => {
    const slanted = (slant: number) => [
      { ...box(40, 40, 60, 80), slant },
      { ...box(106, 40, 60, 80), slant },
    ]
    expect(found(slanted(28))).not.toBeNull()
    expect(found(slanted(38))).toBeNull()
  })

  test('is a picture of one light', () => {
    expect(found([])).toBeNull()
    expect(found([], { ground: 0 })).toBeNull()
  })
})

test('the light beside the panels is the middle of the picture’s rim', () => {
  const rim = fieldOf(40, 20, (x, y) => (y === 0 ? 0.1 : y === 19 ? 0.3 : x === 0 || x === 39 ? 0.2 : 0.9))
  expect(surroundLight(rim)).toBeCloseTo(0.2, 6)
  const brightSides = fieldOf(40, 20, (x, y) => (y === 0 || y === 19 ? 0.1 : x === 0 || x === 39 ? 0.8 : 0.9))
  expect(surroundLight(brightSides)).toBeCloseTo(0.1, 6)
  // Of four points each is on two sides: the fifth of eight values, from the darkest, is the third point.
  expect(surroundLight(fieldOf(2, 2, (x, y) => [2, 3, 1, 4][2 * y + x] as number))).toBe(3)
})
