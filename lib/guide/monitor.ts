import type { State } from './explore'
import type { Answer, Hazard } from './types'
import { FRESH_HAZARDS, HAZARDS } from './types'

/**
 * What a watcher beside the walk notes. It goes by what was asked and answered, not by the marks that the flow
 * sets, so that a flow with a wrong mark is found out. Hazards are bits in the order of `HAZARDS`.
 */
export interface Monitor {
  denied: number
  /** Denied since the last start or wait. */
  fresh: number
  /** Answered yes or not sure. */
  active: number
  starts: number
  actions: number
  /** 0: nothing pending · 1: a start was given, and no wait yet · 2: waited, and hazards are not all asked again. */
  stale: 0 | 1 | 2
  /** Said to be in the home. */
  present: boolean
  away: boolean
  coAlarm: boolean
  whichAsked: boolean
  /** Asked whether the one start is spent, and answered no. */
  startLeft: boolean
  /** Turned off once, before the checks. */
  off: boolean
  tripped: boolean
  /** Said that it is below 60 °F inside, or not known. */
  cold: boolean
  indoorAsked: boolean
  /** The least severity that an answer on the way promised. */
  least: number
}

export const START_MONITOR: Monitor = {
  denied: 0,
  fresh: 0,
  active: 0,
  starts: 0,
  actions: 0,
  stale: 0,
  present: false,
  away: false,
  coAlarm: false,
  whichAsked: false,
  startLeft: false,
  off: false,
  tripped: false,
  cold: false,
  indoorAsked: false,
  least: 0,
}

export function bit(hazard: Hazard): number {
  return 1 << HAZARDS.indexOf(hazard)
}

export function bits(hazards: readonly Hazard[]): number {
  return hazards.reduce((sum, hazard) => sum | bit(hazard), 0)
}

export function hazardsOf(set: number): Hazard[] {
  return HAZARDS.filter((hazard) => (set & bit(hazard)) !== 0)
}

export const ALL_HAZARDS = bits(HAZARDS)
export const FRESH = bits(FRESH_HAZARDS)
/** What "something changed" may mean. */
export const CHANGED = bits(['gas', 'co', 'fire'])
/** Hazards that empty the home, or need an ambulance. */
export const LEAVE = bits(['gas', 'co', 'fire', 'flood', 'steam', 'people'])

/** The hazards that an answer says are there, at a gate or anywhere else. */
export function hazardsAdmitted(state: Pick<State, 'node'>, answer: Answer): number {
  let set = 0
  for (const hazard of HAZARDS) if (answer.sets?.[`${hazard}Denied`] === 'no') set |= bit(hazard)
  if (state.node.hazard !== undefined && (answer.id === 'yes' || answer.id === 'unsure')) set |= bit(state.node.hazard)
  return set
}

/** What the watcher notes when an answer is taken. */
export function watch(before: Monitor, state: Pick<State, 'node' | 'shown' | 'marks'>, answer: Answer): Monitor {
  const after = { ...before }
  const { node } = state
  const sets = answer.sets ?? {}
  after.least = Math.max(before.least, Number(sets.least ?? 0))
  after.tripped ||= sets.tripped === 'yes'
  if (!state.shown) {
    // Passed because there is only one.
    if (node.when?.systems !== undefined && state.marks.systems === 'one') after.whichAsked = true
    return after
  }
  after.active |= hazardsAdmitted(state, answer)
  if (node.kind === 'gate' && node.hazard !== undefined && answer.id === 'no') {
    after.denied |= bit(node.hazard)
    after.fresh |= bit(node.hazard)
    if (after.stale === 2 && (after.fresh & FRESH) === FRESH) after.stale = 0
  }
  if (node.kind === 'question') {
    if (sets.presence !== undefined) {
      after.present = answer.id === 'yes'
      after.away = answer.id !== 'yes'
    }
    if (sets.coAlarm !== undefined) after.coAlarm = answer.id === 'works'
    if (sets.systems !== undefined) after.whichAsked = true
    if (node.id === 'indoor') {
      after.indoorAsked = true
      after.cold = answer.id === 'cold' || answer.id === 'unsure'
    }
    if (sets.resetUsed !== undefined) after.startLeft = answer.id === 'no'
  }
  if (node.kind === 'check') {
    after.actions = Math.min(before.actions + 1, 9)
    if (node.says?.includes('thermostat-off') && answer.id === 'done') after.off = true
    if (node.turnsOn) {
      after.starts = Math.min(before.starts + 1, 3)
      after.fresh = 0
      after.stale = 1
    }
  }
  if (node.kind === 'wait') {
    after.fresh = 0
    // A wait of less than five minutes after a start is no wait.
    after.stale = (node.minutes ?? 0) >= 5 ? 2 : before.stale
  }
  return after
}

/** One text for each thing that may be noted. */
export function keyOf(monitor: Monitor): string {
  return Object.values(monitor).join(',')
}
