import { describe, expect, it } from 'vitest'
import { checkState } from '@/lib/guide/check-states'
import { bit, bits, type Monitor } from '@/lib/guide/monitor'
import type { GuideNode, Marks } from '@/lib/guide/types'
import { graphOf, guideNode, SECTIONS, stateOf } from '../support/a-small-guide'

describe('an end', () => {
  const END = guideNode('end', 'outcome', { severity: 1, sections: SECTIONS })
  const end = (node: Partial<GuideNode>, monitor: Partial<Monitor> = {}, marks: Marks = {}, id = 'small') => [
    ...checkState(graphOf([], { id }), stateOf({ ...END, ...node }, { marks, monitor })),
  ]
  const danger = (severity: 0 | 1 | 2 | 3) => ({ severity, text: 'DANGER. Get out.' })

  it('with every section, and everything asked, has no fault', () => {
    for (const severity of [0, 1, 2] as const) expect(end({ severity })).toEqual([])
    expect(end(danger(3))).toEqual([])
  })

  it('has every section, but the tenant’s only for who does not own', () => {
    const few = { sections: SECTIONS.filter(({ slot }) => slot !== 'say' && slot !== 'tenant') }
    const [say, tenant] = [
      [13, 'no section say with these marks'],
      [13, 'no section tenant with these marks'],
    ]
    expect(end(few)).toEqual([say, tenant])
    expect(end(few, {}, { tenure: 'own' })).toEqual([say])
  })

  it.each<[string, Partial<GuideNode>, Partial<Monitor>, [number, string][]]>([
    ['milder than an answer promised', {}, { least: 2 }, [[8, 'severity 1, although an answer stands for 2']]],
    ['not urgent after a second trip', {}, { tripped: true }, [[6, 'less than urgent after a second trip']]],
    ['mild, and oil was never asked', {}, { denied: ~bit('oil') }, [[8, 'ends without asking about oil']]],
    [
      'urgent, and gas was never asked',
      { severity: 2 },
      { denied: ~bit('gas') },
      [[8, 'ends without asking about gas']],
    ],
    ['by nobody knows whom', {}, { present: false }, [[23, 'ends without asking whether the person is there']]],
    ['mild while a wait is open', {}, { stale: 1 }, [[21, 'ends without asking again about gas, co, fire, boom']]],
    [
      'urgent after a wait',
      { severity: 2 },
      { stale: 2 },
      [[21, 'ends without asking again about gas, co, fire, boom']],
    ],
    ['an alarm word on what can wait', { text: 'WARNING. Wait.' }, {}, [[19, 'WARNING on something that can wait']]],
    ['DANGER without a hazard', danger(2), {}, [[19, 'DANGER without a hazard']]],
    ['an emergency without its word', { severity: 3 }, {}, [[19, 'an emergency without a signal word']]],
  ])('%s is one fault', (_what, node, monitor, expected) => {
    expect(end(node, monitor)).toEqual(expected)
  })

  it('may be urgent without what only a mild one must ask', () => {
    expect(end({ severity: 2 }, { denied: ~bit('oil'), tripped: true, least: 2, stale: 1 })).toEqual([])
    expect(end({}, { away: true, present: false, denied: 0 })).toEqual([])
    expect(end({ severity: 2 }, { stale: 2, active: bit('oil') }).map(([invariant]) => invariant)).not.toContain(21)
    expect(end(danger(3), { denied: 0, present: false, stale: 2 })).toEqual([])
  })

  it('is as severe as the hazard that is there', () => {
    const because = (node: Partial<GuideNode>, monitor: Partial<Monitor>) => end(node, monitor).map(([, why]) => why)
    expect(because(danger(2), { active: bit('gas'), denied: ~bit('gas') })).toEqual(['less than an emergency with gas'])
    expect(because({ text: 'WARNING. x' }, { active: bit('oil') })).toContain('less than urgent with oil')
    expect(because({ severity: 2, text: 'WARNING. x' }, { active: bit('oil') })).toEqual([])
    // Water that is gone by now is urgent, and needs no DANGER then.
    const flood = { active: bit('flood') }
    expect(because({ severity: 2, text: 'WARNING. x' }, flood)).toEqual([])
    expect(because(danger(2), { ...flood, denied: ~bit('flood') })).toEqual(['less than an emergency with flood'])
  })

  it('begins with the word of the first hazard that is there', () => {
    const words = (text: string, active: number, severity: 2 | 3 = 3) =>
      end({ severity, text }, { active }).map(([, why]) => why)
    expect(words('DANGER. x', bits(['gas', 'oil']))).toEqual([])
    expect(words('WARNING. x', bit('gas'))).toEqual(['gas needs the word DANGER'])
    expect(words('WARNING. x', bit('flood'))).toEqual(['flood needs the word DANGER'])
    expect(words('WARNING. x', bit('water'), 2)).toEqual(['water needs the word DANGER'])
    expect(words('WARNING. x', bits(['people', 'shock']))).toEqual([])
    expect(words('x', bit('oil'), 2)).toEqual(['oil needs a signal word'])
    expect(words('Text with DANGER. x', bit('oil'), 2)).toEqual(['oil needs a signal word'])
  })

  it('of a flow without heat is urgent where cold is at stake', () => {
    const warm = { vulnerable: 'no', coldRisk: 'no' }
    const cold = (monitor: Partial<Monitor>, marks: Marks, node: Partial<GuideNode> = {}) =>
      end(node, monitor, marks, 'no-heat').map(([invariant, why]) => [invariant, why])
    expect(cold({}, warm)).toEqual([])
    expect(cold({}, { ...warm, vulnerable: 'yes' })).toEqual([[15, 'less than urgent with someone vulnerable']])
    expect(cold({}, { ...warm, coldRisk: 'yes' })).toEqual([[15, 'less than urgent with cold at stake']])
    const below = [[15, 'less than urgent, and it may be below 60 °F inside']]
    expect(cold({ cold: true }, warm)).toEqual(below)
    expect(cold({ indoorAsked: false }, warm)).toEqual(below)
    expect(cold({ cold: true }, {}, { severity: 2 })).toEqual([])
    expect(end({}, { cold: true }, {}, 'dust')).toEqual([])
  })
})
