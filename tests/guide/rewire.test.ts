import { describe, expect, it } from 'vitest'
import { FLOWS, getFlow } from '@/content/guide/flows'
import { judge, listRewirings } from '@/tests/support/rewire'

/** Every how-manieth rewiring is tried, and from which one on: the largest flows are slow, so they are sampled. */
const SAMPLES: [flow: string, step: number, from: number][] = [
  ['alarm', 7, 0],
  ['water', 29, 3],
  ['noise', 29, 11],
  ['weak-air', 181, 5],
  ['no-cooling', 701, 13],
  ['outdoor-ice', 487, 3],
  ['thermostat-blank', 1303, 7],
  ['short-heat', 1499, 2],
  ['power-cut', 2503, 4],
  ['no-heat', 3001, 9],
]

describe('leading an answer to any other node', () => {
  it.each(SAMPLES)(
    '%s: is caught, or gains no action and loses no severity on any state',
    (id, step, from) => {
      const flow = getFlow(id)
      const all = listRewirings(flow)
      const counts = { caught: 0, harmless: 0 }
      const missed: string[] = []
      for (let i = from; i < all.length; i += step) {
        const edge = all[i]
        if (edge === undefined) continue
        const verdict = judge(flow, edge)
        if (verdict.kind === 'missed') {
          const node = flow.nodes[edge.node]
          missed.push(`${node?.id}.${node?.answers?.[edge.answer]?.id} → ${edge.to}: ${verdict.because}`)
        } else counts[verdict.kind]++
      }
      expect(missed).toEqual([])
      expect(counts.caught).toBeGreaterThan(0)
      console.info(
        `${id}: ${all.length} rewirings, ${counts.caught} caught and ${counts.harmless} harmless of those tried`,
      )
    },
    120_000,
  )

  it('samples every flow', () => {
    expect(SAMPLES.map(([id]) => id).sort()).toEqual(FLOWS.map((flow) => flow.id).sort())
  })
})
