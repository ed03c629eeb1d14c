import { afterEach, expect, test, vi } from 'vitest'
import { now, today } from '@/lib/clock'

afterEach(() => vi.unstubAllEnvs())

// Checked against the IANA zone database by way of Node's own ICU; the offsets beside each are published ones.
test('around one midnight four zones have their own day', () => {
  vi.stubEnv('PLENUM_NOW', '2026-11-25T05:30:00Z')
  expect(today('America/New_York')).toBe('2026-11-25') // UTC−5: 00:30
  expect(today('America/Chicago')).toBe('2026-11-24') // UTC−6: 23:30
  expect(today('Pacific/Honolulu')).toBe('2026-11-24') // UTC−10
  expect(today('Pacific/Auckland')).toBe('2026-11-25') // UTC+13
})

test('at both clock changes the day turns at local midnight', () => {
  for (const [instant, day] of [
    ['2026-03-08T05:59:59Z', '2026-03-07'], // Chicago, still UTC−6
    ['2026-03-08T06:00:00Z', '2026-03-08'],
    ['2026-03-09T04:59:59Z', '2026-03-08'], // now UTC−5
    ['2026-03-09T05:00:00Z', '2026-03-09'],
    ['2026-11-01T04:59:59Z', '2026-10-31'],
    ['2026-11-02T05:59:59Z', '2026-11-01'], // UTC−6 again
    ['2026-11-02T06:00:00Z', '2026-11-02'],
  ] as const) {
    vi.stubEnv('PLENUM_NOW', instant)
    expect(today('America/Chicago'), instant).toBe(day)
  }
})

test('a zone that does not exist is an error, and so is a held clock that is no instant', () => {
  expect(() => today('America/Nowhere')).toThrow(RangeError)
  vi.stubEnv('PLENUM_NOW', 'yesterday')
  expect(now).toThrow('PLENUM_NOW is no instant: yesterday')
})

test('a clock that nobody holds runs', () => {
  vi.stubEnv('PLENUM_NOW', '')
  expect(Math.abs(now().getTime() - Date.now())).toBeLessThan(1000)
})
