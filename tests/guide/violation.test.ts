import { expect, it } from 'vitest'
import { violationText } from '@/lib/guide/violation'

const FAULT = { flow: 'no-heat', invariant: 3, node: 'filter', because: 'reachable without asking about oil' }

it('a broken rule is told by flow, number, node and reason, with the way to it on a line of its own', () => {
  expect(violationText({ ...FAULT, path: 'gas: no → filter' })).toBe(
    'no-heat · invariant 3 · filter: reachable without asking about oil\n    gas: no → filter',
  )
})

it('a fault in the node itself has no way to it, and no line for one', () => {
  expect(violationText({ ...FAULT, path: '' })).toBe(
    'no-heat · invariant 3 · filter: reachable without asking about oil',
  )
})
