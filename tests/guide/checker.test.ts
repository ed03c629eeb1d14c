import { describe, expect, it } from 'vitest'
import { FLOWS } from '@/content/guide/flows'
import { GUIDE_SOURCES } from '@/content/guide/sources'
import { readingGrade } from '@/lib/cli/reading-grade'
import { checkFlow, checkFlows } from '@/lib/guide/checker'
import type { Answer, Flow } from '@/lib/guide/types'
import { violationText } from '@/lib/guide/violation'
import { answer, guideNode } from '@/tests/support/a-small-guide'
import { Draft, MUTANTS } from '@/tests/support/mutants'

// Mutants share almost all their texts with the real flows.
const grades = new Map<string, number>()
function grade(text: string): number {
  const known = grades.get(text) ?? readingGrade(text)
  grades.set(text, known)
  return known
}

const PARTS = { sources: GUIDE_SOURCES, readability: { grade } }

describe('the ten flows', () => {
  it('hold every invariant in every reachable state', () => {
    const report = checkFlows(FLOWS, PARTS)
    expect(report.violations.map(violationText)).toEqual([])
    expect(Object.keys(report.states)).toHaveLength(10)
    expect(Math.min(...Object.values(report.states))).toBeGreaterThan(50)
  }, 60_000)

  it('flag every text whose source has changed since its review', () => {
    const sources = GUIDE_SOURCES.map((source) =>
      source.id === 'nfpa-alarms' ? { ...source, changed: '2026-12-01' } : source,
    )
    const flow = new Draft('alarm').flow
    const { violations } = checkFlow(flow, { ...PARTS, sources })
    const citing = flow.nodes.filter((node) => node.sources.includes('nfpa-alarms')).map((node) => node.id)
    expect(violations.map((each) => each.node).sort()).toEqual(citing.sort())
    expect(violations.every((each) => each.invariant === 20)).toBe(true)
  })
})

describe('the checker catches', () => {
  it.each(MUTANTS.map((mutant) => [mutant.invariant, mutant.name, mutant] as const))(
    '%i: %s',
    (invariant, _name, mutant) => {
      const draft = new Draft(mutant.flow)
      mutant.break(draft)
      const { violations } = checkFlow(draft.flow, PARTS)
      expect(violations.map((each) => each.invariant)).toContain(invariant)
    },
  )

  it('at least three ways to break each invariant', () => {
    for (let invariant = 1; invariant <= 24; invariant++) {
      const count = MUTANTS.filter((mutant) => mutant.invariant === invariant).length
      expect(count, `invariant ${invariant}`).toBeGreaterThanOrEqual(3)
    }
  })
})

describe('of a small flow', () => {
  const LEAVE = guideNode('leave', 'outcome', { severity: 3 })
  const END = guideNode('end', 'outcome', { severity: 1 })
  const flowWith = (answers: Answer[], ...nodes: Flow['nodes']): Flow => ({
    ...{ id: 'small', title: 'Small', start: 'gas', changed: 'leave', facts: [] },
    nodes: [guideNode('gas', 'gate', { hazard: 'gas', answers }), LEAVE, END, ...nodes],
  })
  const found = (flow: Flow, node: string) =>
    checkFlow(flow, { sources: [] }).violations.filter((violation) => violation.node === node)

  it('a fault is told once a node, with the first and shortest way to it', () => {
    const mid = guideNode('mid', 'question', { answers: [answer('on', 'end')] })
    const ways = [answer('yes', 'leave'), answer('no', 'mid'), answer('unsure', 'end')]
    const told = found(flowWith(ways, mid), 'end').filter(
      ({ because }) => because === 'no section call with these marks',
    )
    expect(told).toEqual([
      {
        ...{ flow: 'small', invariant: 13, node: 'end', because: 'no section call with these marks' },
        path: 'gas: unsure → end',
      },
    ])
  })

  it('the words of an answer are checked too: a printed one may only say to leave, a button what the person says', () => {
    const words = (as: Answer['as'], text: string) =>
      found(flowWith([answer('yes', 'leave', { as, text }), answer('no', 'end')]), 'gas')
        .map(({ invariant, because }) => [invariant, because])
        .filter(([, because]) => String(because).includes('“'))
    expect(words('text', 'Yes. Get everyone out.')).toEqual([])
    expect(words('text', 'Yes. Open the windows.')).toEqual([
      [9, 'says windows without naming it: “Open the windows.”'],
    ])
    expect(words('button', 'Open the windows.')).toEqual([])
    expect(words('button', 'Open the front panel.')).toEqual([[2, 'opens or removes a cover: “Open the front panel.”']])
  })
})
