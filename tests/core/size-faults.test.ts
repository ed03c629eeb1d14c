import { describe, expect, test } from 'vitest'
import { faultsOf } from '@/lib/core/size-faults'

function codesOf(widthIn: number, heightIn: number, depthIn: number) {
  return faultsOf({ widthIn, heightIn, depthIn }).map(({ field, code }) => [field, code])
}

describe('a size that cannot be a filter', () => {
  test('has sides outside 4 to 40 inches, or a depth outside half an inch to 6', () => {
    for (const [width, height, depth] of [
      [4, 4, 0.5],
      [40, 40, 6],
      [16, 25, 1],
    ] as const)
      expect(codesOf(width, height, depth)).toEqual([])
    expect(codesOf(3.9, 40.1, 1)).toEqual([
      ['widthIn', 'side-small'],
      ['heightIn', 'side-large'],
    ])
    expect(codesOf(16, 25, 0.4)).toEqual([['depthIn', 'depth-small']])
    expect(codesOf(16, 25, Number.NaN)).toEqual([['depthIn', 'not-a-number']])
    expect(codesOf(16, 25, Number.POSITIVE_INFINITY)).toEqual([['depthIn', 'not-a-number']])
    expect(codesOf(16, 25, 6.1)).toEqual([['depthIn', 'depth-large']])
    expect(codesOf(0, Number.NaN, 0)).toEqual([
      ['widthIn', 'zero'],
      ['heightIn', 'not-a-number'],
      ['depthIn', 'zero'],
    ])
  })

  test('is more than five times as long as wide, told at the narrow side', () => {
    expect(codesOf(5, 25, 1)).toEqual([])
    expect(codesOf(5, 26, 1)).toEqual([['widthIn', 'too-narrow']])
    expect(codesOf(26, 5, 1)).toEqual([['heightIn', 'too-narrow']])
  })

  test('has a depth that is no thin side: larger than one of the others is enough, as large is not', () => {
    expect(codesOf(5, 20, 5)).toEqual([])
    expect(codesOf(5, 20, 5.5)).toEqual([['depthIn', 'depth-not-last']])
    expect(codesOf(20, 5, 5.5)).toEqual([['depthIn', 'depth-not-last']])
    // A side of nothing has its own fault, and says nothing of the depth.
    expect(codesOf(0, 25, 1)).toEqual([['widthIn', 'zero']])
    expect(codesOf(25, -5, 1)).toEqual([['heightIn', 'zero']])
  })

  test('that looks like millimeters says so, from a hundred on', () => {
    const say = (widthIn: number) => faultsOf({ widthIn, heightIn: 25, depthIn: 1 })[0]?.say ?? ''
    expect(say(99)).not.toContain('millimeters')
    expect(say(100)).toMatch(/If you measured in millimeters, choose that\.$/)
    expect(say(400)).toContain('millimeters')
  })
})
