import { expect, test } from 'vitest'
import { PathMap } from '@/lib/core/path-map'

test('the value at a path is made once, and no other path finds it', () => {
  const map = new PathMap<string>()
  const made: string[] = []
  const get = (...path: (string | number | null)[]) => map.get(path, () => `value ${made.push(JSON.stringify(path))}`)
  const paths = [
    ['a', 1, null],
    ['a', 1, 'null'],
    ['a', '1', null],
    ['a', null, 1],
    [null, 1, 'a'],
  ]
  const first = paths.map((path) => get(...path))
  expect(new Set(first).size).toBe(5)
  expect(paths.toReversed().map((path) => get(...path))).toEqual(first.toReversed())
  expect(made).toEqual(paths.map((path) => JSON.stringify(path)))
})

test('a path may be a single step', () => {
  const map = new PathMap<number>()
  expect([map.get(['a'], () => 1), map.get(['b'], () => 2), map.get(['a'], () => 3)]).toEqual([1, 2, 1])
})
