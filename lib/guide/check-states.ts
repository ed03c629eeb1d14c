import type { Graph, State } from './explore'
import { CONTRAINDICATED, SIGNALS } from './matrix'
import { ALL_HAZARDS, bit, bits, FRESH, hazardsOf, LEAVE } from './monitor'
import type { InstructionClass } from './types'
import { FRESH_HAZARDS, HAZARDS, SLOTS } from './types'
import { holds, listSections } from './walk'

/** Flows that lose the heat: cold and vulnerable people make every outcome urgent. */
export const HEAT_FLOWS = ['no-heat', 'short-heat', 'outdoor-ice', 'thermostat-blank', 'power-cut']

export type Fault = [invariant: number, because: string]

/** What must be known before a text with this instruction is shown (invariants 14 and 17). */
const NEEDS: { says: InstructionClass; when: Record<string, string[]> }[] = [
  { says: 'filter', when: { delivery: ['ducted'] } },
  { says: 'registers', when: { delivery: ['ducted'] } },
  { says: 'vent-clearing', when: { burnsFuel: ['yes'] } },
  { says: 'oil-button', when: { heatSource: ['oil'], tenure: ['own', 'let'], oilButton: ['out'] } },
  { says: 'emergency-heat', when: { heatSource: ['heat-pump'] } },
  { says: 'breaker', when: { breaker: ['tripped'] } },
  { says: 'switch-on', when: { switch: ['off'] } },
  { says: 'batteries', when: { setting: ['blank'] } },
]

/** Everything that one reachable state can break. */
export function* checkState(graph: Graph, state: State): Generator<Fault> {
  if (!state.shown) {
    if (state.edges.length === 0) yield [1, 'passed through, and no skip holds']
    else if (new Set(state.edges.map((edge) => edge.answer)).size > 1) yield [1, 'passed through, and two skips hold']
    return
  }
  const taken = new Map<string, unknown>()
  for (const { answer } of state.edges) {
    const same = taken.get(answer.id)
    if (same !== undefined && same !== answer) yield [1, `two answers ${answer.id} hold at once`]
    taken.set(answer.id, answer)
  }
  for (const answer of state.node.answers ?? [])
    if (answer.id !== 'skip' && !taken.has(answer.id)) yield [1, `answer ${answer.id} is missing with these marks`]
  yield* contraindications(state)
  if (state.node.kind === 'outcome') yield* outcomeFaults(graph, state)
  else yield* stepFaults(graph, state)
}

function* contraindications(state: State): Generator<Fault> {
  const { node, monitor } = state
  // Once the home must be left, whatever has not been denied yet may be there too.
  const possible = monitor.active & LEAVE ? bits(['gas', 'co', 'fire']) & ~monitor.denied : 0
  const parts = [{ says: node.says }, ...listSections(node, state.marks)]
  for (const hazard of hazardsOf(monitor.active | possible))
    for (const part of parts)
      for (const name of part.says ?? [])
        if (CONTRAINDICATED[hazard].includes(name)) yield [9, `says ${name}, and ${hazard} is there or not ruled out`]
}

function* stepFaults(graph: Graph, { node, marks, monitor }: State): Generator<Fault> {
  if (node.kind === 'gate' && monitor.active !== 0)
    yield [22, `asks on although ${hazardsOf(monitor.active).join(', ')} was answered yes or not sure`]
  if (monitor.stale === 2 && node.kind !== 'gate') yield [21, 'hazards were not asked again after the wait']
  if (monitor.stale === 1 && node.kind !== 'wait') yield [18, 'a start is not followed by a wait']
  if (node.kind !== 'check' && node.kind !== 'look') return
  const missing = hazardsOf(ALL_HAZARDS & ~monitor.denied)
  // From inside the home, and only with every hazard denied.
  if (missing.length > 0) yield [3, `reachable without asking about ${missing.join(', ')}`]
  if (monitor.active !== 0) yield [22, `reachable although ${hazardsOf(monitor.active).join(', ')} was answered yes`]
  if (!monitor.present) yield [23, 'reachable by someone who is not in the home']
  if (node.kind !== 'check') return
  if (marks.hazardSeen !== 'no') yield [22, `reachable with hazardSeen ${marks.hazardSeen ?? 'unread'}`]
  if (!monitor.whichAsked) yield [24, 'reachable without asking which system']
  if (monitor.starts > 0) yield [4, 'a check after the start']
  if (monitor.tripped) yield [6, 'reachable after a second trip']
  if (monitor.actions >= 6) yield [17, 'more than six actions on one path']
  for (const need of NEEDS)
    if (node.says?.includes(need.says) && !holds(need.when, marks))
      yield [
        need.says === 'breaker' || need.says === 'switch-on' || need.says === 'batteries' ? 17 : 14,
        `says ${need.says} without ${JSON.stringify(need.when)}`,
      ]
  if ((node.action === 'filter' || node.says?.includes('vent-clearing')) && !monitor.off)
    yield [17, 'before everything is turned off']
  const guarded =
    node.turnsOn || node.action === 'breaker' || node.action === 'reset' || node.says?.includes('vent-clearing')
  if (guarded && marks.burnsFuel !== 'no' && !monitor.coAlarm) yield [23, 'without a CO alarm that works']
  if (guarded && marks.burnsFuel === 'no' && !['electric', 'heat-pump'].includes(marks.heatSource ?? ''))
    yield [23, `taken as burning no fuel with ${marks.heatSource ?? 'unknown heat'}`]
  // Off once, all the checks, on once: without a start left there is nothing to turn off for.
  if (!graph.givesStart) return
  if (marks.resetUsed !== 'no') yield [4, `reachable with resetUsed ${marks.resetUsed ?? 'unread'}`]
  if (!monitor.startLeft) yield [5, 'reachable without asking whether the start was spent']
  if (marks.tripped !== 'no') yield [6, `reachable with tripped ${marks.tripped ?? 'unread'}`]
  if (!node.turnsOn) return
  if (FRESH & ~monitor.fresh)
    yield [21, `a start without asking again about ${hazardsOf(FRESH & ~monitor.fresh).join(', ')}`]
}

function* outcomeFaults({ flow }: Graph, state: State): Generator<Fault> {
  const { node, marks, monitor } = state
  const severity = node.severity ?? 0
  const slots = new Set(listSections(node, marks).map((section) => section.slot))
  for (const slot of SLOTS)
    if (!slots.has(slot) && (slot !== 'tenant' || marks.tenure !== 'own'))
      yield [13, `no section ${slot} with these marks`]
  if (severity < monitor.least) yield [8, `severity ${severity}, although an answer stands for ${monitor.least}`]
  if (monitor.tripped && severity < 2) yield [6, 'less than urgent after a second trip']
  if (severity < 3) {
    // Flood water that is gone by now is urgent; the others empty the home.
    const leave = monitor.active & LEAVE & ~(monitor.denied & bit('flood'))
    if (leave) yield [22, `less than an emergency with ${hazardsOf(leave).join(', ')}`]
    if (monitor.active && severity < 2) yield [22, `less than urgent with ${hazardsOf(monitor.active).join(', ')}`]
    const unasked = monitor.away ? 0 : (severity < 2 ? ALL_HAZARDS : LEAVE) & ~monitor.denied & ~monitor.active
    if (unasked) yield [8, `ends without asking about ${hazardsOf(unasked).join(', ')}`]
    if (!monitor.away && !monitor.present) yield [23, 'ends without asking whether the person is there']
    if (monitor.stale !== 0 && (severity < 2 || monitor.stale === 2) && monitor.active === 0)
      yield [21, `ends without asking again about ${FRESH_HAZARDS.join(', ')}`]
  }
  if (HEAT_FLOWS.includes(flow.id) && severity < 2) {
    if (marks.vulnerable !== 'no') yield [15, 'less than urgent with someone vulnerable']
    if (!monitor.indoorAsked || monitor.cold) yield [15, 'less than urgent, and it may be below 60 °F inside']
    if (marks.coldRisk !== 'no') yield [15, 'less than urgent with cold at stake']
  }
  yield* signalFaults(state, severity)
}

function* signalFaults({ node, monitor }: State, severity: number): Generator<Fault> {
  const signal = node.text.startsWith('DANGER. ') ? 'DANGER' : node.text.startsWith('WARNING. ') ? 'WARNING' : null
  if (severity === 3 && signal === null) yield [19, 'an emergency without a signal word']
  if (severity < 2 && signal !== null) yield [19, `${signal} on something that can wait`]
  const [first] = HAZARDS.filter((hazard) => monitor.active & bit(hazard))
  if (first === undefined) {
    if (severity === 2 && signal === 'DANGER') yield [19, 'DANGER without a hazard']
    return
  }
  if (SIGNALS[first] === 'DANGER' && signal !== 'DANGER' && !(first === 'flood' && severity === 2))
    yield [19, `${first} needs the word DANGER`]
  if (signal === null) yield [19, `${first} needs a signal word`]
}
