import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { commonSizes } from '@/content/common-sizes'
import { inches, sizeInWords } from '@/lib/core/filter-words'
import type { NominalSize } from '@/lib/core/household'
import { nominalFromMeasured, nominalFromPrinted, type SizeAnswer, TAPE_TOLERANCE_IN } from '@/lib/core/nominal-size'

type Triple = readonly [number, number, number]

function size([widthIn, heightIn, depthIn]: Triple): NominalSize {
  return { widthIn, heightIn, depthIn }
}

function measured(...triple: Triple): SizeAnswer {
  return nominalFromMeasured(size(triple), commonSizes)
}

function printed(...triple: Triple): SizeAnswer {
  return nominalFromPrinted(size(triple), commonSizes)
}

function nominal(answer: SizeAnswer): NominalSize {
  if (answer.kind === 'refused') throw new Error(`refused: ${answer.faults.map((fault) => fault.say).join(' ')}`)
  return answer.nominal
}

function codes(answer: SizeAnswer): string[] {
  return answer.kind === 'refused' ? answer.faults.map((fault) => fault.code) : answer.notes.map((note) => note.code)
}

// Actual and nominal as frames commonly print them: common practice, from memory.
const ACTUAL_TO_NOMINAL: readonly (readonly [Triple, Triple])[] = [
  [
    [15.5, 24.5, 0.75],
    [16, 25, 1],
  ],
  [
    [15.5, 19.5, 0.75],
    [16, 20, 1],
  ],
  [
    [15.75, 24.75, 0.75],
    [16, 25, 1],
  ],
  [
    [19.5, 19.5, 0.75],
    [20, 20, 1],
  ],
  [
    [19.75, 24.75, 0.75],
    [20, 25, 1],
  ],
  [
    [13.75, 19.75, 0.75],
    [14, 20, 1],
  ],
  [
    [11.5, 11.5, 0.75],
    [12, 12, 1],
  ],
  [
    [9.5, 19.5, 0.75],
    [10, 20, 1],
  ],
  [
    [23.375, 29.375, 0.75],
    [24, 30, 1],
  ],
  [
    [17.75, 23.75, 0.875],
    [18, 24, 1],
  ],
  [
    [15.5, 24.5, 1.75],
    [16, 25, 2],
  ],
  [
    [19.5, 24.5, 1.75],
    [20, 25, 2],
  ],
  [
    [23.5, 23.5, 1.75],
    [24, 24, 2],
  ],
  [
    [15.5, 24.5, 3.625],
    [16, 25, 4],
  ],
  [
    [19.5, 24.5, 3.75],
    [20, 25, 4],
  ],
  [
    [15.75, 24.25, 4.375],
    [16, 25, 5],
  ],
  [
    [19.75, 24.25, 4.375],
    [20, 25, 5],
  ],
  [
    [15.375, 25.5, 4.875],
    [16, 26, 5],
  ],
]

describe('the nominal size', () => {
  test.each(ACTUAL_TO_NOMINAL)('measured %j is sold as %j, either way round', (actual, expected) => {
    expect(nominal(measured(...actual))).toEqual(size(expected))
    const [width, height, depth] = actual
    expect(nominal(measured(height, width, depth))).toEqual(size([expected[1], expected[0], expected[2]]))
  })

  test('what a millimeter rule gives, converted by the caller, comes to the same: 394 × 622 × 19 mm', () => {
    expect(nominal(measured(394 / 25.4, 622 / 25.4, 19 / 25.4))).toEqual(size([16, 25, 1]))
  })

  test('is never more than a tape error below what was measured, and less than an inch above', () => {
    const tape = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(
      fc.property(tape(8, 40), tape(8, 40), tape(0.5, 6), (width, height, depth) => {
        const found = nominal(measured(width, height, depth))
        for (const [side, given] of [
          [found.widthIn, width],
          [found.heightIn, height],
          [found.depthIn, depth],
        ] as const) {
          expect(Number.isInteger(side)).toBe(true)
          expect(side - given).toBeGreaterThanOrEqual(-TAPE_TOLERANCE_IN)
          expect(side - given).toBeLessThan(1)
        }
      }),
      { numRuns: 1000 },
    )
  })

  test('turns with the filter: swapping width and height swaps every answer', () => {
    const side = fc.integer({ min: 10 * 16, max: 36 * 16 }).map((sixteenths) => sixteenths / 16)
    const depth = fc.integer({ min: 8, max: 96 }).map((sixteenths) => sixteenths / 16)
    fc.assert(
      fc.property(side, side, depth, fc.boolean(), (width, height, depthIn, isPrinted) => {
        const read = isPrinted ? printed : measured
        const [one, other] = [read(width, height, depthIn), read(height, width, depthIn)]
        if (one.kind === 'refused' || other.kind === 'refused') throw new Error('a possible size was refused')
        const turned = (given: NominalSize | null) =>
          given && { widthIn: given.heightIn, heightIn: given.widthIn, depthIn: given.depthIn }
        expect(turned(one.nominal)).toEqual(other.nominal)
        expect(turned(one.second)).toEqual(other.second)
        if (width !== height) expect(turned(one.nearest)?.depthIn).toBe(other.nearest?.depthIn)
        expect(codes(one)).toEqual(codes(other))
      }),
      { numRuns: 500 },
    )
  })

  test.each(commonSizes)('$widthIn × $heightIn × $depthIn, read or measured, is itself', (common) => {
    const given = size([common.widthIn, common.heightIn, common.depthIn])
    for (const answer of [printed(...asTriple(given)), measured(...asTriple(given))]) {
      expect(answer).toMatchObject({ kind: 'nominal', nominal: given, nearest: given, isCommon: true, second: null })
    }
    expect(codes(printed(...asTriple(given)))).toEqual([])
    const frame = [given.widthIn - 0.5, given.heightIn - 0.5, given.depthIn - 0.25] as const
    expect(nominal(measured(...frame))).toEqual(given)
    expect(nominal(printed(...frame))).toEqual(given)
  })
})

function asTriple(given: NominalSize): Triple {
  return [given.widthIn, given.heightIn, given.depthIn]
}

describe('doubt', () => {
  test('a frame a little over the inch may be either size, and both are named', () => {
    const answer = measured(20.125, 20.125, 0.75)
    expect(answer).toMatchObject({ nominal: size([21, 21, 1]), second: size([20, 20, 1]) })
    expect(codes(answer)).toContain('two-fit')
  })

  test('a swollen depth of 1 1/8 may be 1 or 2', () => {
    expect(measured(15.5, 24.5, 1.125)).toMatchObject({ nominal: size([16, 25, 2]), second: size([16, 25, 1]) })
  })

  test('a quarter of an inch over, it is the next size alone; nor is a second one named that no filter has', () => {
    expect(measured(20.24, 20.5, 0.75)).toMatchObject({ nominal: size([21, 21, 1]), second: size([20, 21, 1]) })
    expect(measured(20.25, 20.5, 0.75)).toMatchObject({ nominal: size([21, 21, 1]), second: null })
    // 4 × 21 would be more than five times as long as it is wide.
    expect(measured(4.125, 20.5, 0.75)).toMatchObject({ nominal: size([5, 21, 1]), second: null })
  })

  test('whole inches measured may be the opening instead of the frame, to a tape’s error and on both sides', () => {
    expect(codes(measured(16, 25, 0.75))).toContain('full-size')
    expect(codes(measured(16 + 1 / 16, 25 - 1 / 16, 0.75))).toContain('full-size')
    for (const [width, height] of [
      [15.5, 24.5],
      [16, 24.5],
      [15.5, 25],
    ] as const)
      expect(codes(measured(width, height, 0.75))).toEqual([])
  })

  test('a printed actual size is told from a printed size with fractions', () => {
    expect(printed(15.5, 24.5, 0.75)).toMatchObject({ nominal: size([16, 25, 1]), second: size([15.5, 24.5, 1]) })
    expect(printed(16.375, 21.5, 1)).toMatchObject({ nominal: size([16.375, 21.5, 1]), second: size([17, 22, 1]) })
    expect(codes(printed(16.375, 21.5, 1))).toContain('fraction')
    const frame = printed(15.5, 24.5, 0.75)
    expect(codes(frame)).toEqual(['printed-is-actual'])
    if (frame.kind === 'nominal') expect(frame.notes[0]?.say).toMatch(/Shops call it 16 × 25 × 1\./)
  })

  test('a printed size is that of the frame where no side is more than three quarters of an inch under a common one', () => {
    expect(codes(printed(15.25, 24.25, 0.75))).toEqual(['printed-is-actual'])
    expect(printed(16, 24.5, 0.75)).toMatchObject({ nominal: size([16, 25, 1]), second: size([16, 24.5, 1]) })
    for (const [width, height] of [
      [15.2, 24.5],
      [15.5, 24.2],
    ] as const)
      expect(printed(width, height, 0.75)).toMatchObject({
        nominal: size([width, height, 1]),
        second: size([16, 25, 1]),
        notes: [{ code: 'fraction' }, { code: 'not-common' }],
      })
  })

  test('an uncommon size is kept, and the nearest common one is named in the same orientation', () => {
    const answer = measured(24.5, 16.5, 0.75)
    expect(answer).toMatchObject({ nominal: size([25, 17, 1]), nearest: size([25, 16, 1]), isCommon: false })
    expect(codes(answer)).toEqual(['not-common'])
  })

  test('the nearest common size keeps the depth, for another depth does not sit in the slot', () => {
    expect(measured(13.5, 23.5, 4.5)).toMatchObject({ nearest: { depthIn: 5 } })
  })

  test('a depth nobody sells is doubted', () => {
    expect(codes(measured(15.5, 24.5, 2.75))).toContain('odd-depth')
  })

  test('an empty table gives no nearest size instead of a guess', () => {
    expect(nominalFromPrinted(size([16, 25, 1]), [])).toMatchObject({ nearest: null, isCommon: false })
  })
})

describe('what cannot be a filter', () => {
  test.each<[Triple, string[]]>([
    [
      [0, 900, 1],
      ['zero', 'side-large'],
    ],
    [[16, 25, 0], ['zero']],
    [[-16, 25, 1], ['zero']],
    [
      [Number.NaN, 25, Number.POSITIVE_INFINITY],
      ['not-a-number', 'not-a-number'],
    ],
    [[3.5, 25, 1], ['side-small']],
    [[16, 41, 1], ['side-large']],
    [[16, 25, 0.25], ['depth-small']],
    [[16, 25, 7], ['depth-large']],
    [
      [1, 16, 25],
      ['side-small', 'depth-not-last'],
    ],
    [[4, 36, 1], ['too-narrow']],
    [
      [394, 622, 19],
      ['side-large', 'side-large', 'depth-large'],
    ],
  ])('%j is refused for every reason at once', (given, expected) => {
    for (const answer of [measured(...given), printed(...given)]) {
      expect(answer.kind).toBe('refused')
      expect(codes(answer)).toEqual(expected)
    }
  })

  test('any three numbers at all give an answer, and every sentence is plain text that ends', () => {
    const any = fc.oneof(fc.double(), fc.double({ min: 0, max: 45 }), fc.constantFrom(0, -0, 4, 40, 6, 0.5))
    fc.assert(
      fc.property(any, any, any, fc.boolean(), (width, height, depth, isPrinted) => {
        const answer = isPrinted ? printed(width, height, depth) : measured(width, height, depth)
        const says = answer.kind === 'refused' ? answer.faults : answer.notes
        for (const { say } of says) {
          expect(say).toMatch(/^[A-Z0-9].*\.$/)
          expect(say).not.toMatch(/NaN|undefined|Infinity|\btrim|\bforce|\bsqueeze|\bbend/i)
        }
        if (answer.kind === 'refused') expect(says.length).toBeGreaterThan(0)
      }),
      { numRuns: 2000 },
    )
  })
})

test('inches are written as a tape shows them', () => {
  expect(inches(0.75)).toBe('¾')
  expect(inches(15.5)).toBe('15½')
  expect(inches(16)).toBe('16')
  expect(inches(394 / 25.4)).toBe('15.51')
  expect(sizeInWords(size([15.5, 24.5, 0.75]))).toBe('15½ × 24½ × ¾')
})

test('the common sizes are at least forty, without doubles, in the four depths shops keep', () => {
  const texts = commonSizes.map(sizeInWords)
  expect(texts.length).toBeGreaterThanOrEqual(40)
  expect(new Set(texts).size).toBe(texts.length)
  expect(new Set(commonSizes.map((row) => row.depthIn))).toEqual(new Set([1, 2, 4, 5]))
  expect(commonSizes.every((row) => row.widthIn <= row.heightIn && row.mark === 'P')).toBe(true)
})
