import { describe, expect, test } from 'vitest'
import { LIGHT_PICTURE } from '@/content/light-picture'
import type { Box } from '@/lib/core/light-panels'
import { type LightQuestion, type LightReading, readLightPicture } from '@/lib/core/light-picture'
import type { Picture } from '@/lib/core/linear-light'
import { pictureOf } from '../support/light-field'

interface Panel extends Box {
  light: number
  /** Over how many pixels the light falls off at the left edge, and at the right one. */
  soft?: readonly [number, number]
}

const HEIGHT = 120
const LEFT = { x: 40, y: 20, width: 100, height: 80 }
const RIGHT = { ...LEFT, x: 160 }

/** How much of a panel's light a pixel shows: all of it inside, half of it at an edge. */
function share({ x, y, width, height, soft: [left, right] = [0, 0] }: Panel, px: number, py: number): number {
  if (py < y || py >= y + height) return 0
  const rise = (beyond: number, over: number) => Math.min(1, Math.max(0, beyond / Math.max(over, 1e-9) + 0.5))
  return Math.min(rise(px + 0.5 - x, left), rise(x + width - px - 0.5, right))
}

function read(
  thisFilter: Panel,
  reference: Panel,
  { ground = 0, by = 'new-filter' as LightQuestion['reference'], lamp = (_x: number): number => 1 } = {},
): LightReading {
  const picture = pictureOf(300, HEIGHT, (px, py) => {
    const lit = [thisFilter, reference].map((panel) => (panel.light * lamp(px) - ground) * share(panel, px, py))
    return ground + Math.max(...lit)
  })
  return ask(picture, thisFilter, reference, by)
}

function ask(picture: Picture, thisFilter: Box, reference: Box, by: LightQuestion['reference'] = 'new-filter') {
  return readLightPicture(picture, { reference: by, side: 'left', panels: { thisFilter, reference } }, LIGHT_PICTURE)
}

function codes(reading: LightReading): string[] {
  return reading.kind === 'refused' ? reading.faults.map((fault) => fault.code) : []
}

test('a picture of 64 pixels a side is large enough, and one of 63 is not', () => {
  const half = (width: number, height: number) => {
    const [left, right] = [0.06, 0.56].map((x) => ({ x: x * width, y: 0, width: 0.38 * width, height })) as [Box, Box]
    const isIn = ({ x, width: wide }: Box, px: number) => px >= x && px < x + wide
    return codes(
      ask(
        pictureOf(width, height, (px) => (isIn(left, px) || isIn(right, px) ? 0.5 : 0)),
        left,
        right,
      ),
    )
  }
  expect([half(64, 90), half(90, 64)]).toEqual([[], []])
  expect([half(63, 90), half(90, 63)]).toEqual([['too-small'], ['too-small']])
})

describe('a picture is blurred', () => {
  const SHARP = [0, 0] as const
  // What is blurred on the outer side only: what is sharp beside it, towards the gap, does not count.
  const sides = [
    ['left', LEFT, RIGHT, [20, 0], [0, 20]],
    ['right', RIGHT, LEFT, [0, 20], [20, 0]],
  ] as const

  test.each(sides)('where the outer edges of both panels are, this one being on the %s', (_, mine, other, ...soft) => {
    const told = (mySoft: readonly [number, number], otherSoft: readonly [number, number]) =>
      codes(read({ ...mine, light: 0.3, soft: mySoft }, { ...other, light: 0.6, soft: otherSoft }))
    expect(told(SHARP, SHARP)).toEqual([])
    expect(told(soft[0], soft[1])).toEqual(['blurred'])
    expect([told(SHARP, soft[1]), told(soft[0], SHARP)]).toEqual([[], []])
    // The other way round each is blurred towards the gap only.
    expect(told(soft[1], soft[0])).toEqual([])
  })

  test('where an edge is wider than seven hundredths of its panel', () => {
    // Of twelve pixels' fall eight lie between a fifth and four fifths of the light, and seven where an edge halves one.
    const soft = [12, 12] as const
    const told = (along: number) =>
      codes(read({ ...LEFT, x: 40 + along, light: 0.5, soft }, { ...RIGHT, x: 160 + along, light: 0.5, soft }))
    expect([told(0.5), told(0)]).toEqual([[], ['blurred']])
  })

  test('where the one edge that is seen is; where none is, for all around is as bright, it is not known', () => {
    const mine = { ...LEFT, light: 0.5 }
    const other = { ...RIGHT, light: 0.9 }
    expect(codes(read(mine, other, { ground: 0.3 }))).toEqual([])
    expect(codes(read(mine, { ...other, soft: [20, 20] }, { ground: 0.3 }))).toEqual(['blurred'])
    expect(
      codes(read({ ...mine, soft: [20, 20] }, { ...RIGHT, light: 0.6, soft: [20, 20] }, { ground: 0.35 })),
    ).toEqual([])
  })
})

test('of light all around no more is taken for stray light than half of what this filter passes', () => {
  // A byte of grey is within half a per cent of its light, and a difference of two within a few.
  const reading = read({ ...LEFT, light: 0.5 }, { ...RIGHT, light: 0.6 }, { ground: 0.35 })
  expect(reading.kind === 'read' && reading.ratio).toBeCloseTo((0.5 - 0.25) / (0.6 - 0.25), 1)
  const dimmer = read({ ...LEFT, light: 0.5 }, { ...RIGHT, light: 0.6 }, { ground: 0.2 })
  expect(dimmer.kind === 'read' && dimmer.ratio).toBeCloseTo((0.5 - 0.2) / (0.6 - 0.2), 1)
})

describe('a lamp that shines more on one side', () => {
  // The middles of the two, of which one is twice as wide, lie 130 pixels apart.
  const NARROW = { x: 20, y: 20, width: 60, height: 80 }
  const WIDE = { x: 120, y: 20, width: 120, height: 80 }
  const lampOf = (grows: number) => (x: number) => Math.exp(grows * (x - 130))

  test('is refused from a difference of three tenths in ln(light) between the middles of the two', () => {
    const told = (grows: number, mine: Box, other: Box) =>
      codes(read({ ...mine, light: 0.3 }, { ...other, light: 0.5 }, { lamp: lampOf(grows) }))
    for (const [mine, other] of [
      [NARROW, WIDE],
      [WIDE, NARROW],
    ] as const) {
      expect([told(0.28 / 130, mine, other), told(-0.28 / 130, mine, other)]).toEqual([[], []])
      expect([told(0.32 / 130, mine, other), told(-0.32 / 130, mine, other)]).toEqual([['lopsided'], ['lopsided']])
    }
  })

  test('makes the answer less sure, by half of that difference', () => {
    // 0.15 for the camera, 0.13 for the lamp, and 0.0148 and 0.0074 for what is uneven in each: 0.199 together.
    const deviation = Math.hypot(0.15, 0.13, 0.0148, 0.0074)
    const sureOf = (grows: number) => {
      const ratio = 0.25 ** 0.4 * Math.exp(deviation)
      const passes = ratio * Math.exp(130 * grows)
      const reading = read({ ...NARROW, light: 0.7 * passes }, { ...WIDE, light: 0.7 }, { lamp: lampOf(grows) })
      if (reading.kind === 'refused') throw new Error(codes(reading).join())
      expect(reading.ratio).toBeCloseTo(ratio, 2)
      expect(reading.light).toBe('clear')
      return reading.sureness
    }
    // One deviation from the border of a clear one, and 0.199 / 0.15 of them.
    expect(sureOf(0.002)).toBeGreaterThan(0.83)
    expect(sureOf(0.002)).toBeLessThan(0.85)
    expect(sureOf(0)).toBeGreaterThan(0.9)
  })
})

test('more light than a new filter’s is a mistake of sides from a quarter more; against paper, which varies, from 86 %', () => {
  const told = (ratio: number, by: LightQuestion['reference']) =>
    codes(read({ ...LEFT, light: 0.25 * ratio }, { ...RIGHT, light: 0.25 }, { by }))
  expect([told(1.2, 'new-filter'), told(1.3, 'new-filter')]).toEqual([[], ['swapped']])
  // It is not said of a picture that is too blurred to compare.
  const blurred = (panel: Box, light: number): Panel => ({ ...panel, light, soft: [20, 20] })
  expect(codes(read(blurred(LEFT, 0.5), blurred(RIGHT, 0.25)))).toEqual(['blurred'])
  // A sheet of paper passes as much as 0.6 new filters; e to the 0.4 is 1.49, and 1.25 times that 1.865.
  expect([told(1.3 / 0.6, 'paper'), told(1.83 / 0.6, 'paper'), told(1.9 / 0.6, 'paper')]).toEqual([[], [], ['swapped']])
})
