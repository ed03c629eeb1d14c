import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FLOWS, getFlow } from '@/content/guide/flows'
import { CHANGED, encodeWalk, parseWalk, type Walk, withoutLast } from '@/lib/guide/address'
import { replay, withAnswer, withResume } from '@/lib/guide/replay'
import { HAZARDS } from '@/lib/guide/types'
import { anyChoices, anyFacts, calmWalk, walkBy } from '@/tests/support/walks'

const anyFlow = fc.constantFrom(...FLOWS)
const flowWithFacts = anyFlow.chain((flow) => fc.tuple(fc.constant(flow), anyFacts(flow), anyChoices))
const HOME = { heatSource: 'gas', delivery: 'ducted', systems: 'one', tenure: 'own', vulnerable: 'no', resetUsed: 'no' }

function endOf(walk: Walk): number {
  return walk.startedAt + (walk.steps.at(-1)?.minute ?? 0)
}

describe('an address', () => {
  it('comes back as it was written', () => {
    fc.assert(
      fc.property(flowWithFacts, ([flow, facts, choices]) => {
        const walk = walkBy(flow, facts, choices)
        expect(parseWalk(encodeWalk(walk))).toEqual({ kind: 'walk', walk })
      }),
    )
  })

  it('of any text is read or refused, and never throws', () => {
    const piece = fc.constantFrom(
      '?',
      '&',
      'flow=no-heat',
      'at=29000000',
      's=',
      'gas.no.0',
      '_',
      'n=1',
      '%',
      'n=',
      '=',
      'é',
    )
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(piece).map((parts) => parts.join('')),
        ),
        (text) => {
          const parsed = parseWalk(text)
          if (parsed.kind === 'broken') expect(parsed.because).toMatch(/^The link .*\.$/)
          else expect(parseWalk(encodeWalk(parsed.walk))).toEqual(parsed)
        },
      ),
      { numRuns: 1000 },
    )
  })

  it('cut short anywhere never leads further than its own answers', () => {
    const flow = getFlow('no-heat')
    const walk = calmWalk(flow, HOME)
    const text = encodeWalk(walk)
    for (let length = 0; length < text.length; length++) expect(parseWalk(text.slice(0, length)).kind).toBe('broken')
  })
})

describe('a replay', () => {
  it('walks any real walk to where the person is, within 15 minutes of the last answer', () => {
    fc.assert(
      fc.property(flowWithFacts, ([flow, facts, choices]) => {
        const walk = walkBy(flow, facts, choices)
        const seen = replay({ flow, facts, walk, now: endOf(walk) + 15 })
        expect(seen.kind).toBe('at')
        if (seen.kind === 'at') expect(seen.taken).toHaveLength(walk.steps.length)
      }),
    )
  })

  it('of made-up steps never shows a check or a look unless every hazard was asked and denied', () => {
    const madeUp = flowWithFacts.chain(([flow, facts, choices]) => {
      const ids = fc.constantFrom(...flow.nodes.map((node) => node.id))
      const answers = fc.constantFrom('no', 'yes', 'unsure', 'done', 'right', 'works', 'one', 'waited', 'skip', CHANGED)
      const step = fc.record({ node: ids, answer: answers, minute: fc.integer({ min: 0, max: 40 }) })
      const edit = fc.tuple(fc.nat(60), fc.constantFrom('drop', 'swap', 'insert', 'keep'), step)
      const calmFacts = fc.constantFrom(facts, { ...facts, hazardSeen: 'no', tripped: 'no', resetUsed: 'no' })
      const far = fc.array(fc.integer({ min: 1, max: 10_000 }), { minLength: 14, maxLength: 32 })
      return fc.tuple(fc.constant(flow), calmFacts, fc.oneof(fc.constant(choices), far), edit)
    })
    let checks = 0
    fc.assert(
      fc.property(madeUp, ([flow, facts, choices, [at, how, step]]) => {
        const walk = walkBy(flow, facts, choices)
        const steps = [...walk.steps]
        if (how === 'drop') steps.splice(at, 1)
        if (how === 'swap') steps.splice(at, 1, step)
        if (how === 'insert') steps.splice(at, 0, step)
        const seen = replay({ flow, facts, walk: { ...walk, steps }, now: walk.startedAt + 100 })
        if (seen.kind === 'broken') {
          expect(seen.node.id).toBe('gas')
          expect(seen.because).not.toBe('')
          return
        }
        const shown = seen.kind === 'at' ? seen.node : seen.resumesAt
        if (shown.kind !== 'check' && shown.kind !== 'look') return
        checks++
        const denied = new Set(
          seen.taken
            .filter((each) => each.answer === 'no')
            .map((each) => flow.nodes.find((node) => node.id === each.node)?.hazard),
        )
        for (const hazard of HAZARDS) expect(denied).toContain(hazard)
        expect(seen.taken.some((each) => each.node === 'presence' && each.answer === 'yes')).toBe(true)
        expect(facts.hazardSeen ?? 'no').not.toMatch(/leave|stop/)
      }),
      { numRuns: 3000 },
    )
    expect(checks).toBeGreaterThan(0)
  }, 60_000)

  it('goes back by dropping the last answer', () => {
    fc.assert(
      fc.property(flowWithFacts, ([flow, facts, choices]) => {
        const walk = walkBy(flow, facts, choices)
        const last = walk.steps.at(-1)
        fc.pre(last !== undefined)
        const back = withoutLast(walk)
        const seen = replay({ flow, facts, walk: back, now: endOf(back) })
        expect(seen.kind === 'at' && seen.node.id).toBe(last?.node)
      }),
    )
  })

  it('asks gas, presence, CO, fire and a bang again after 15 minutes, and then shows where the person was', () => {
    const flow = getFlow('no-heat')
    const whole = calmWalk(flow, HOME)
    const at = whole.steps.findIndex((step) => step.node === 'filter')
    let walk: Walk = { ...whole, steps: whole.steps.slice(0, at) }
    let now = endOf(walk) + 16
    for (const id of ['gas', 'presence', 'co', 'fire', 'boom']) {
      const seen = replay({ flow, facts: HOME, walk, now })
      if (seen.kind !== 'hazards-again') throw new Error(`expected ${id}, got ${seen.kind}`)
      expect(seen.node.id).toBe(id)
      expect(seen.resumesAt.id).toBe('filter')
      walk = withAnswer(walk, seen.node, id === 'presence' ? 'yes' : 'no', now)
      now += 1
    }
    const seen = replay({ flow, facts: HOME, walk, now })
    expect(seen.kind === 'at' && seen.node.id).toBe('filter')
  })

  it('asks them again at once after a resume, and a yes then ends the walk', () => {
    const flow = getFlow('no-heat')
    const whole = calmWalk(flow, HOME)
    const cut = { ...whole, steps: whole.steps.slice(0, 20) }
    const now = endOf(cut) + 1
    const resumed = withResume(cut, now)
    const gas = replay({ flow, facts: HOME, walk: resumed, now })
    expect(gas.kind).toBe('hazards-again')
    const over = replay({ flow, facts: HOME, walk: withAnswer(resumed, gas.node, 'yes', now), now })
    expect(over.kind === 'at' && [over.node.id, over.hazardSeen]).toEqual(['emergency-gas', 'leave'])
  })

  it('leads "something changed" to the hazard text from every node, and nowhere after it', () => {
    const flow = getFlow('no-heat')
    const whole = calmWalk(flow, HOME)
    for (let length = 0; length < whole.steps.length; length++) {
      const walk = { ...whole, steps: whole.steps.slice(0, length) }
      const here = replay({ flow, facts: HOME, walk, now: endOf(walk) })
      const changed = withAnswer(walk, here.node, CHANGED, endOf(walk))
      const seen = replay({ flow, facts: HOME, walk: changed, now: endOf(walk) })
      expect(seen.kind === 'at' && [seen.node.id, seen.answers.length, seen.hazardSeen]).toEqual([
        'hazards-now',
        0,
        'leave',
      ])
    }
  })

  it('tells of the one start as soon as it is given', () => {
    const flow = getFlow('no-heat')
    const whole = calmWalk(flow, HOME)
    const start = whole.steps.findIndex((step) => step.node === 'start')
    for (const [length, spent] of [
      [start, false],
      [start + 1, true],
    ] as const) {
      const walk = { ...whole, steps: whole.steps.slice(0, length) }
      const seen = replay({ flow, facts: HOME, walk, now: endOf(walk) })
      expect(seen.kind === 'at' && seen.startSpent).toBe(spent)
    }
  })

  it('refuses a future start, times that run backwards, a wrong flow and an answer that is not offered', () => {
    const flow = getFlow('alarm')
    const step = { node: 'gas', answer: 'no', minute: 3 }
    const tries: [Walk, RegExp][] = [
      [{ flow: 'alarm', startedAt: 200, steps: [] }, /future/],
      [{ flow: 'alarm', startedAt: 0, steps: [step, { node: 'presence', answer: 'yes', minute: 2 }] }, /backwards/],
      [{ flow: 'alarm', startedAt: 0, steps: [{ ...step, minute: 101 }] }, /future/],
      [{ flow: 'no-heat', startedAt: 0, steps: [] }, /another part/],
      [{ flow: 'alarm', startedAt: 0, steps: [{ ...step, answer: 'maybe' }] }, /does not exist/],
      [{ flow: 'alarm', startedAt: 0, steps: [{ ...step, node: 'sound' }] }, /skips/],
    ]
    for (const [walk, because] of tries) {
      const seen = replay({ flow, facts: {}, walk, now: 100 })
      expect(seen.kind === 'broken' && seen.because).toMatch(because)
    }
  })
})

describe('facts only add caution', () => {
  it('a "no" from the profile or the episode spares no question', () => {
    for (const flow of FLOWS) {
      const asked = (facts: Record<string, string>) =>
        calmWalk(flow, { ...HOME, ...facts }).steps.map((step) => step.node)
      expect(asked({ resetUsed: 'no', vulnerable: 'no', hazardSeen: 'no', tripped: 'no' })).toEqual(
        asked({ resetUsed: 'unknown' }),
      )
    }
  })

  it('a remembered hazard ends every flow without a check', () => {
    for (const flow of FLOWS)
      for (const hazardSeen of ['leave', 'stop']) {
        const steps = calmWalk(flow, { ...HOME, hazardSeen }).steps
        const kinds = steps.map((step) => flow.nodes.find((node) => node.id === step.node)?.kind)
        expect(kinds.filter((kind) => kind === 'check' || kind === 'look')).toEqual([])
      }
  })
})
