import fc from 'fast-check'
import { fleschKincaid } from 'flesch-kincaid'
import { syllable } from 'syllable'
import { describe, expect, test } from 'vitest'
import { FINDER_CARD_TEXTS } from '@/content/finder/card-texts'
import { FINDER, FINDER_ESCAPE } from '@/content/finder/finder'
import { FILTER_PLACES } from '@/lib/core/household'
import { DRAWING_IDS } from '@/lib/guide/drawing-ids'
import { fillEmergency } from '@/lib/guide/export'
import { finderCard } from '@/lib/guide/finder-card'
import {
  addressAfter,
  addressBefore,
  addressOf,
  answersFromAddress,
  type FinderState,
  replayFinder,
} from '@/lib/guide/finder-replay'
import type { Finder, FinderAction, FinderQuestion, FinderScreen } from '@/lib/guide/finder-types'

const OPENING: readonly FinderAction[] = [
  'open-grille',
  'open-slot',
  'open-media-door',
  'open-filter-door',
  'open-flap',
  'open-ventilator',
]

const MOST_STATES = 20_000

// What the safety tests ask of a path: states that differ in none of these are checked once.
const MARKS: readonly (readonly [string, string])[] = [
  ['hazards', 'no'],
  ['trouble', 'no'],
  ['unit-trouble', 'no'],
  ['door', 'yes'],
  ['off', 'done'],
  ['switch', 'off'],
]

function keyOf(state: FinderState): string {
  return JSON.stringify([state.screen.id, Object.entries(state.draft).sort()])
}

function hasOpened(state: FinderState): boolean {
  return state.steps.some((step) => step.screen.asks.some((asked) => OPENING.includes(asked)))
}

/** Every state reachable by answering, told apart by screen, draft and marks; throws past the limit. */
function reachable(finder: Finder): FinderState[] {
  const seen = new Map<string, FinderState>()
  const open: string[][] = [[]]
  for (let answers = open.pop(); answers !== undefined; answers = open.pop()) {
    const state = replayFinder(finder, answers)
    const marks = MARKS.map(([screen, answer]) => isAnswered(state, screen, answer))
    const key = JSON.stringify([keyOf(state), marks, state.steps.at(-1)?.screen.id, hasOpened(state)])
    if (seen.has(key)) continue
    seen.set(key, state)
    if (seen.size > MOST_STATES) throw new Error('too many states to check')
    if (state.screen.kind === 'question') for (const answer of state.screen.answers) open.push([...answers, answer.id])
  }
  return [...seen.values()]
}

/** The most answers any path takes. Throws, with the path, where answers lead back to a state already passed. */
function longestPath(finder: Finder): number {
  const known = new Map<string, number>()
  const passed = new Set<string>()
  function from(answers: string[]): number {
    const state = replayFinder(finder, answers)
    const key = keyOf(state)
    if (passed.has(key)) throw new Error(`a circle: ${path(state)}`)
    const before = known.get(key)
    if (before !== undefined) return before
    passed.add(key)
    const { screen } = state
    const longest =
      screen.kind === 'question' ? 1 + Math.max(...screen.answers.map((answer) => from([...answers, answer.id]))) : 0
    passed.delete(key)
    known.set(key, longest)
    return longest
  }
  return from([])
}

const STATES = reachable(FINDER)
const SCREENS = FINDER.screens.filter(
  (screen): screen is Exclude<FinderScreen, { kind: 'fork' }> => screen.kind !== 'fork',
)
const QUESTIONS = SCREENS.filter((screen): screen is FinderQuestion => screen.kind === 'question')
function path(state: FinderState): string {
  return `${state.steps.map((step) => `${step.screen.id}=${step.answer.id}`).join(' → ')} → ${state.screen.id}`
}

function isAnswered(state: FinderState, screen: string, answer: string): boolean {
  return state.steps.some((step) => step.screen.id === screen && step.answer.id === answer)
}

function asking(actions: readonly FinderAction[]): FinderState[] {
  return STATES.filter(
    ({ screen }) => screen.kind === 'question' && screen.asks.some((asked) => actions.includes(asked)),
  )
}

/** Faults that a finder may have in how its screens hang together. */
function faultsOf(finder: Finder): string[] {
  const ids = finder.screens.map((screen) => screen.id)
  const targets = finder.screens.flatMap((screen) =>
    screen.kind === 'question'
      ? screen.answers.map((answer) => answer.next)
      : screen.kind === 'fork'
        ? [...Object.values(screen.to), screen.otherwise]
        : [],
  )
  return [
    ...ids.filter((id, index) => ids.indexOf(id) !== index).map((id) => `double ${id}`),
    ...targets.filter((id) => !ids.includes(id)).map((id) => `no screen ${id}`),
    ...ids.filter((id) => id !== finder.start && !targets.includes(id)).map((id) => `never reached ${id}`),
    ...finder.screens.filter((s) => s.kind === 'question' && s.answers.length === 0).map((s) => `dead end ${s.id}`),
  ]
}

describe('the finder', () => {
  test('has no dead end, no missing and no unreachable screen', () => {
    expect(faultsOf(FINDER)).toEqual([])
    expect(new Set(STATES.map((state) => state.screen.id))).toEqual(new Set(SCREENS.map((screen) => screen.id)))
    for (const question of QUESTIONS) {
      const ids = question.answers.map((answer) => answer.id)
      expect(new Set(ids).size).toBe(ids.length)
      for (const id of ids) expect(id).toMatch(/^[a-z-]+$/)
    }
  })

  test('a missing target, a double and an orphan are found', () => {
    const [first] = FINDER.screens
    if (first === undefined) throw new Error('an empty finder')
    expect(faultsOf({ ...FINDER, screens: [...FINDER.screens, first] })).toContain('double hazards')
    const orphan = { ...first, id: 'alone' }
    expect(faultsOf({ ...FINDER, screens: [...FINDER.screens, orphan] })).toContain('never reached alone')
    expect(faultsOf({ ...FINDER, screens: FINDER.screens.filter((s) => s.id !== 'card') })).toContain('no screen card')
  })

  test('every path ends in one card or one referral within 30 answers, and none goes in a circle', () => {
    expect(longestPath(FINDER)).toBeLessThanOrEqual(30)
    for (const state of STATES) {
      expect(state.stray).toEqual([])
      if (state.screen.kind === 'card') expect(() => finderCard(state.draft, FINDER_CARD_TEXTS)).not.toThrow()
    }
  })

  test('a circle is found', () => {
    const screens = FINDER.screens.map((screen) =>
      screen.id === 'lease' && screen.kind === 'question'
        ? { ...screen, answers: [{ id: 'again', say: 'Again', next: 'whose' }] }
        : screen,
    )
    expect(() => longestPath({ ...FINDER, screens })).toThrow('a circle')
  })

  test('says "you" only of the place that was itself opened, and found filled, on the way', () => {
    const opened = { 'furnace-slot': 'open-slot', 'media-cabinet': 'open-media', 'in-cabinet': 'open-door' } as const
    const screens = { 'ductless-head': 'open-flap', ventilator: 'open-ventilator' } as const
    for (const state of STATES) {
      const { place, opener } = state.draft
      if (state.screen.kind !== 'card' || opener !== 'you' || place === undefined) continue
      const by = {
        ...opened,
        ...screens,
        'ceiling-grille': 'open-grille',
        'wall-grille': 'open-grille',
        'floor-grille': 'open-grille',
      }
      expect(isAnswered(state, by[place], place in screens ? 'screens' : 'filter'), path(state)).toBe(true)
    }
  })

  test('every place can be found, and each has its card text', () => {
    const places = new Set(STATES.filter((state) => state.screen.kind === 'card').map((state) => state.draft.place))
    expect(places).toEqual(new Set(FILTER_PLACES))
    expect(FINDER_CARD_TEXTS.places.map((row) => row.place)).toEqual([...FILTER_PLACES])
  })

  test('every drawing it names is drawn, and every drawing is used', () => {
    const used = [
      ...SCREENS.flatMap((screen) => screen.drawings ?? []),
      ...FINDER_CARD_TEXTS.places.flatMap((row) => [row.drawing, ...(row.arrow ? [row.arrow.drawing] : [])]),
    ]
    expect([...new Set(used)].sort()).toEqual([...DRAWING_IDS].sort())
  })
})

describe('safety', () => {
  test('nothing is asked of anyone before gas, CO, smoke, water, soot and covers are denied', () => {
    for (const state of STATES) {
      if (state.screen.kind !== 'question' || state.screen.asks.length === 0) continue
      expect(isAnswered(state, 'hazards', 'no') && isAnswered(state, 'trouble', 'no'), path(state)).toBe(true)
    }
  })

  test('not sure about a hazard is treated as yes', () => {
    for (const screen of ['hazards', 'trouble', 'unit-trouble']) {
      const question = QUESTIONS.find((candidate) => candidate.id === screen)
      const severity = (answer: string) => {
        const end = FINDER.screens.find((s) => s.id === question?.answers.find((a) => a.id === answer)?.next)
        return end?.kind === 'referral' ? end.severity : -1
      }
      expect(severity('unsure')).toBeGreaterThanOrEqual(severity('yes'))
      expect(severity('yes')).toBeGreaterThanOrEqual(2)
    }
  })

  test('at severity 3 there is nothing more to tap', () => {
    const ends = SCREENS.filter((screen) => screen.kind === 'referral')
    for (const end of ends) if (end.severity === 3) expect(end.offersCheck).toBe(false)
    expect(ends.some((end) => end.severity === 3)).toBe(true)
  })

  test('nothing is opened before it is off, in reach, and theirs to open', () => {
    const opening = asking(OPENING)
    expect(opening.length).toBeGreaterThan(0)
    for (const state of opening) {
      const last = state.steps.at(-1)?.screen.id
      expect(['off', 'head-off', 'ventilator-off', 'switch'], path(state)).toContain(last)
      expect(['floor', 'stool'], path(state)).toContain(state.draft.reach)
      expect(state.draft.mayOpen, path(state)).toBe('yes')
    }
  })

  test('a cabinet is opened only by its owner, by a door of its own, with power off and a CO alarm', () => {
    const opening = asking(['open-filter-door'])
    expect(opening.length).toBeGreaterThan(0)
    for (const state of opening) {
      expect(state.draft.whose, path(state)).toBe('own')
      expect(isAnswered(state, 'door', 'yes') && isAnswered(state, 'switch', 'off'), path(state)).toBe(true)
      expect(isAnswered(state, 'off', 'done') && isAnswered(state, 'unit-trouble', 'no'), path(state)).toBe(true)
    }
  })

  test('who may not open it gets a card that says whom to ask, and no steps', () => {
    for (const state of STATES) {
      const { screen, draft } = state
      if (screen.kind !== 'card') continue
      const card = finderCard(draft, FINDER_CARD_TEXTS)
      if (!hasOpened(state)) expect(card.opener).toBe('ask')
      if (card.opener === 'ask') expect(card.reach).toEqual(FINDER_CARD_TEXTS.ask)
    }
  })

  test('no sentence asks for a tool, a ladder, a burner, a relight, or for cutting a filter', () => {
    const forbidden =
      /\b(unscrew|screwdriver|remove (the )?(cover|panel)|open (the )?(burner|cover|panel)|relight|re-light|reset|climb up|trim|cut it|push it in|press hard|bypass|tape|valve|meter|capacitor)\b/i
    for (const sentence of sentences()) expect(sentence).not.toMatch(forbidden)
  })

  test('a clogged filter: never without one, never cut, and people before the unit', () => {
    const card = finderCard(
      { place: 'wall-grille', opener: 'you', reach: 'floor', light: 'dark', spare: 'no' },
      FINDER_CARD_TEXTS,
    )
    const text = card.clogged.join(' ')
    expect(text).toMatch(/Never run .* without a filter/)
    expect(text).toMatch(/Never cut or bend/)
    expect(text).toMatch(/Cold is worse for people/)
    const wet = finderCard({ place: 'wall-grille', opener: 'you', light: 'damaged', spare: 'no' }, FINDER_CARD_TEXTS)
    expect(wet.clogged.join(' ')).toMatch(/Do not put it back/)
    const head = finderCard({ place: 'ductless-head', opener: 'you' }, FINDER_CARD_TEXTS)
    expect(head).toMatchObject({ arrow: null, sizeFrom: 'none' })
    expect(head.clogged.join(' ')).toMatch(/dry fully/)
  })

  test('every screen names its sources', () => {
    for (const screen of [...SCREENS, ...FINDER_CARD_TEXTS.places]) {
      expect(screen.sources.length).toBeGreaterThan(0)
      for (const source of screen.sources) expect(source).toMatch(/^(E\d+|CP|POL)$/)
    }
  })
})

function sentences(): string[] {
  const { places, ...lists } = FINDER_CARD_TEXTS
  return [
    ...SCREENS.flatMap((screen) => [...screen.text, ...('cautions' in screen ? (screen.cautions ?? []) : [])]),
    ...Object.values(lists).flat(),
    ...places.flatMap((row) => [...row.reach, ...(row.arrow ? [row.arrow.say] : [])]),
    fillEmergency(FINDER_ESCAPE),
  ]
}

function grade(text: string): number {
  const parts = text.split(/[.?!:]+\s*/).filter((part) => part.trim() !== '')
  const words = text.match(/[A-Za-z0-9']+/g) ?? []
  return fleschKincaid({
    sentence: parts.length,
    word: words.length,
    syllable: words.reduce((sum, word) => sum + syllable(word), 0),
  })
}

describe('the reading grade', () => {
  test.each(SCREENS.map((screen) => [screen.id, screen] as const))(
    '%s reads at grade 6 or below, 20 words a sentence at most',
    (_, screen) => {
      const text = [...screen.text, ...(screen.cautions ?? [])].join(' ')
      expect(grade(text)).toBeLessThanOrEqual(screen.kind === 'referral' && screen.severity === 3 ? 5 : 6)
    },
  )

  test('so do the card and every single sentence keeps to 20 words', () => {
    const { places, ...lists } = FINDER_CARD_TEXTS
    for (const list of [...Object.values(lists), ...places.map((row) => row.reach)]) {
      expect(grade(list.join(' ')), list.join(' ')).toBeLessThanOrEqual(6)
    }
    for (const sentence of sentences().flatMap((text) => text.split(/[.?!]\s*/))) {
      expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(20)
    }
  })
})

describe('replay', () => {
  test('the same answers lead to the same screen, and one step back is where one was', () => {
    for (const state of STATES.filter((_, index) => index % 7 === 0)) {
      const answers = state.steps.map((step) => step.answer.id)
      const again = replayFinder(FINDER, answersFromAddress(addressOf(answers)))
      expect(again).toEqual(state)
      const last = answers.at(-1)
      if (last !== undefined) {
        const before = replayFinder(FINDER, answersFromAddress(addressBefore(state)))
        expect(addressAfter(before, last)).toBe(addressOf(answers))
      }
    }
  })

  test('rubbish in the address stops at the last screen that fits and says what did not', () => {
    const state = replayFinder(FINDER, ['no', 'no', 'castle', 'own'])
    expect(state.screen.id).toBe('whose')
    expect(state.stray).toEqual(['castle', 'own'])
    fc.assert(
      fc.property(fc.string({ maxLength: 3000 }), (text) => {
        const answers = answersFromAddress(text)
        const { steps, stray } = replayFinder(FINDER, answers)
        expect([...steps.map((step) => step.answer.id), ...stray]).toEqual(answers)
      }),
      { numRuns: 500 },
    )
  })
})
