import type { Finder, FinderAnswer, FinderDraft, FinderEnd, FinderQuestion, FinderScreen } from './finder-types'

export interface FinderStep {
  screen: FinderQuestion
  answer: FinderAnswer
}

/** Where a list of answers leads. */
export interface FinderState {
  screen: FinderQuestion | FinderEnd
  steps: FinderStep[]
  draft: FinderDraft
  /** Answers of the address that fit no screen on the way: the page says so and shows the last screen that did. */
  stray: string[]
}

/**
 * Walks the answers of an address through the finder. Pure: the same answers always lead to the same screen.
 * Throws only on a finder that names a screen it does not have.
 */
export function replayFinder(finder: Finder, answers: readonly string[]): FinderState {
  const byId = new Map(finder.screens.map((screen) => [screen.id, screen]))
  let draft: FinderDraft = {}
  let screen = settle(byId, finder.start, draft)
  const steps: FinderStep[] = []
  for (const [index, id] of answers.entries()) {
    const answer = screen.kind === 'question' ? screen.answers.find((candidate) => candidate.id === id) : undefined
    if (screen.kind !== 'question' || answer === undefined) {
      return { screen, steps, draft, stray: answers.slice(index) }
    }
    steps.push({ screen, answer })
    draft = { ...draft, ...answer.sets }
    screen = settle(byId, answer.next, draft)
  }
  return { screen, steps, draft, stray: [] }
}

/** `answersFromAddress('no.no.own')` is `['no', 'no', 'own']`; null and rubbish are no answers. At most 40 are read. */
export function answersFromAddress(text: string | null | undefined): string[] {
  if (!text) return []
  return text
    .slice(0, 1000)
    .split('.')
    .filter((part) => part !== '')
    .slice(0, 40)
}

/** The reverse: what stands after `?a=`. */
export function addressOf(answers: readonly string[]): string {
  return answers.join('.')
}

/** The address one step on, for a link or a form's value. */
export function addressAfter(state: FinderState, answer: string): string {
  return addressOf([...state.steps.map((step) => step.answer.id), answer])
}

/** The address one step back; null on the first screen. */
export function addressBefore(state: FinderState): string | null {
  if (state.steps.length === 0) return null
  return addressOf(state.steps.slice(0, -1).map((step) => step.answer.id))
}

function settle(byId: Map<string, FinderScreen>, start: string, draft: FinderDraft): FinderQuestion | FinderEnd {
  const seen = new Set<string>()
  let id = start
  for (;;) {
    const screen = byId.get(id)
    if (screen === undefined) throw new Error(`the finder has no screen ${id}`)
    if (screen.kind !== 'fork') return screen
    if (seen.has(id)) throw new Error(`the finder's forks go in a circle at ${id}`)
    seen.add(id)
    const value = draft[screen.on]
    id = (value === undefined ? undefined : screen.to[value]) ?? screen.otherwise
  }
}
