import { describe, expect, test } from 'vitest'
import { lightField, linearOf, quantile } from '@/lib/core/linear-light'

type Rgb = readonly [red: number, green: number, blue: number]

/** A picture of one row. */
function row(...pixels: Rgb[]) {
  return { width: pixels.length, height: 1, rgba: Uint8Array.from(pixels.flatMap((rgb) => [...rgb, 255])) }
}

describe('the light of a picture', () => {
  test('is shared among red, green and blue as the eye sees them, and adds up to that of white', () => {
    const { light } = lightField(row([255, 255, 255], [255, 0, 0], [0, 255, 0], [0, 0, 255], [0, 0, 0]))
    expect([...light].map((value) => Math.round(value * 1e4) / 1e4)).toEqual([1, 0.2126, 0.7152, 0.0722, 0])
  })

  test('is a fifth where the byte is a half', () => {
    const [grey = 0] = lightField(row([128, 128, 128])).light
    expect(grey).toBeCloseTo(0.2159, 4)
    expect(linearOf(0.5)).toBeCloseTo(0.214, 3)
    // The straight part near black, and the curve right after it.
    expect(linearOf(0.04)).toBeCloseTo(0.04 / 12.92, 12)
    expect(linearOf(0.0405)).toBeCloseTo(0.003135, 5)
  })

  test('cannot be told where one colour alone is at 250 or more', () => {
    const pixels: Rgb[] = [
      [249, 249, 249],
      [250, 0, 0],
      [0, 250, 0],
      [0, 0, 250],
      [255, 255, 255],
    ]
    expect([...lightField(row(...pixels)).clipped]).toEqual([0, 1, 1, 1, 1])
  })

  test('is found for a single pixel, row by row, and for no picture without one', () => {
    expect(lightField({ width: 1, height: 1, rgba: new Uint8Array(4) })).toMatchObject({ width: 1, height: 1 })
    const wide = lightField({ ...row([255, 255, 255], [0, 0, 0], [0, 0, 0], [255, 255, 255]), width: 2, height: 2 })
    expect([...wide.light].map(Math.round)).toEqual([1, 0, 0, 1])
    for (const [width, height, bytes] of [
      [0, 3, 0],
      [3, 0, 0],
      [-1, -1, 4],
      [2, 2, 15],
      [2, 2, 17],
    ] as const)
      expect(() => lightField({ width, height, rgba: new Uint8Array(bytes) })).toThrow(RangeError)
  })
})

test('a quantile is the value with that share of the list below it, however the list comes', () => {
  const of = (share: number) => quantile([10, 9, 30, 20], share)
  expect([0, 0.24, 0.25, 0.5, 0.99, 1].map(of)).toEqual([9, 9, 10, 20, 30, 30])
  expect(quantile([], 0.5)).toBe(0)
})
