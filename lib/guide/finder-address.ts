import { answersFromAddress, type FinderState, replayFinder } from './finder-replay'
import type { Finder } from './finder-types'

/** After this long the hazards are asked again before any step (safety rule 21). */
export const FRESH_MINUTES = 15

/** What stands in the finder's address. All of it may be typed by anybody. */
export interface FinderAddress {
  /** The answers, `no.no.own`. */
  a: string
  /** When the hazards were last asked, in minutes since 1970. */
  t: string
  /** Answers of an earlier walk, to go on with once the hazards are asked again. */
  k: string
}

export interface FinderWalk extends FinderState {
  /** The walk was older than 15 minutes, or came without its time: the hazards are asked again. */
  isAskedAgain: boolean
  /** Answers to go on with, once the first two screens are answered; empty if there are none. */
  kept: string
}

// A phone's clock and the server's are never quite the same.
const CLOCKS_DIFFER_MINUTES = 5

// `hazards` and `trouble`: what must be fresh.
const GATES = 2

/** Replays an address at a moment. Nothing older than 15 minutes is believed about a hazard. Pure. */
export function walkFinder(finder: Finder, { a, t, k }: FinderAddress, nowMinutes: number): FinderWalk {
  const answers = answersFromAddress(a)
  const kept = answersFromAddress(k).join('.')
  if (answers.length === 0) return { ...replayFinder(finder, []), isAskedAgain: false, kept }
  const began = /^\d{1,9}$/.test(t) ? Number(t) : Number.NaN
  const isFresh = nowMinutes - began <= FRESH_MINUTES && began - nowMinutes <= CLOCKS_DIFFER_MINUTES
  // An end that sends people away needs no fresh time: it asks for no step.
  const state = replayFinder(finder, answers)
  if (!isFresh && !(state.screen.kind === 'referral' && state.screen.severity >= 2)) {
    return { ...replayFinder(finder, []), isAskedAgain: true, kept: goesOn(answers) ? answers.join('.') : kept }
  }
  if (kept !== '' && state.stray.length === 0 && passesGates(state)) {
    return { ...replayFinder(finder, answersFromAddress(kept)), isAskedAgain: false, kept: '' }
  }
  return { ...state, isAskedAgain: false, kept }
}

function goesOn(answers: string[]): boolean {
  return answers.length > GATES && answers.slice(0, GATES).every((answer) => answer === 'no')
}

function passesGates({ steps }: FinderState): boolean {
  return steps.length === GATES && goesOn([...steps.map(({ answer }) => answer.id), ''])
}

/** `?a=…&t=…` for a next screen; `rest` are other fields of the address to carry along. */
export function finderHref(given: {
  a: string
  t: string | number
  k?: string
  rest?: Record<string, string>
}): string {
  const { a, t, k, rest = {} } = given
  const fields = new URLSearchParams(a === '' ? {} : { a, t: String(t) })
  if (k) fields.set('k', k)
  for (const [name, value] of Object.entries(rest)) if (value !== '') fields.set(name, value)
  const text = fields.toString()
  return text === '' ? '/find' : `/find?${text}`
}
