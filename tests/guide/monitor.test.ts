import { expect, it } from 'vitest'
import {
  bit,
  bits,
  FRESH,
  hazardsAdmitted,
  hazardsOf,
  keyOf,
  type Monitor,
  START_MONITOR,
  watch,
} from '@/lib/guide/monitor'
import type { Answer, GuideNode, Marks } from '@/lib/guide/types'
import { answer, guideNode } from '../support/a-small-guide'

type Change = Partial<GuideNode> & { shown?: boolean; marks?: Marks }

/** What the watcher has noted more, or otherwise, once an answer is taken at a node of a kind. */
function noted(
  kind: GuideNode['kind'],
  change: Change,
  taken: Answer,
  before: Partial<Monitor> = {},
): Partial<Monitor> {
  const { shown = true, marks = {}, ...node } = change
  const from = { ...START_MONITOR, ...before }
  const after = watch(from, { node: guideNode(node.id ?? 'x', kind, node), shown, marks }, taken)
  return Object.fromEntries(
    Object.entries(after).filter(([key, value]) => value !== from[key as keyof Monitor]),
  ) as Partial<Monitor>
}

const [YES, NO, UNSURE] = ['yes', 'no', 'unsure'].map((id) => answer(id, 'end')) as [Answer, Answer, Answer]

it('a hazard denied at its gate is denied and fresh, one met or not ruled out is there', () => {
  expect(noted('gate', { hazard: 'gas' }, NO)).toEqual({ denied: bit('gas'), fresh: bit('gas') })
  expect(noted('gate', { hazard: 'gas' }, answer('yes', 'end'))).toEqual({ active: bit('gas') })
  expect(noted('gate', { hazard: 'gas' }, answer('unsure', 'end'))).toEqual({ active: bit('gas') })
  // Nowhere else does a no deny a hazard.
  expect(noted('question', { hazard: 'gas' }, answer('no', 'end'))).toEqual({})
  expect(noted('gate', {}, answer('no', 'end'))).toEqual({})
})

it('a hazard that an answer says is there is there, wherever it was asked, and every one of them', () => {
  const wet = answer('wet', 'end', {
    sets: { waterDenied: 'no', coDenied: 'no', oilDenied: 'stale', gasDenied: 'yes' },
  })
  expect(noted('check', {}, wet)).toMatchObject({ active: bits(['co', 'water']) })
  expect(noted('question', {}, wet)).toEqual({ active: bits(['co', 'water']) })
  // With what was there before, and with the hazard of the gate where it is answered.
  const unsure = answer('unsure', 'end', { sets: { waterDenied: 'no' } })
  expect(noted('gate', { hazard: 'boom' }, unsure, { active: bit('oil') })).toEqual({
    active: bits(['water', 'boom', 'oil']),
  })
})

it('an answer that several gates have says that the hazard of the gate is there at which it is given', () => {
  expect(noted('gate', { hazard: 'co' }, YES)).toEqual({ active: bit('co') })
  expect(noted('gate', { hazard: 'fire' }, YES)).toEqual({ active: bit('fire') })
  expect(hazardsAdmitted({ node: guideNode('x', 'gate', { hazard: 'people' }) }, YES)).toBe(bit('people'))
  expect(hazardsAdmitted({ node: guideNode('x', 'question') }, YES)).toBe(0)
})

it('after a wait all that must be asked again is asked, and then nothing is pending', () => {
  const asked = { fresh: bits(['gas', 'co', 'fire']) }
  const boom = { hazard: 'boom' } as const
  expect(noted('gate', boom, NO, { ...asked, stale: 2 })).toMatchObject({ fresh: FRESH, stale: 0 })
  expect(noted('gate', { hazard: 'oil' }, NO, { ...asked, stale: 2 })).not.toHaveProperty('stale')
  // A start without its wait is not settled by questions.
  expect(noted('gate', boom, NO, { ...asked, stale: 1 })).not.toHaveProperty('stale')
})

it('questions tell who is there, what works and what was asked', () => {
  const sets = (id: string, mark: string) => answer(id, 'end', { sets: { [mark]: id } })
  expect(noted('question', {}, sets('yes', 'presence'))).toEqual({ present: true })
  expect(noted('question', {}, sets('no', 'presence'), { present: true })).toEqual({ present: false, away: true })
  expect(noted('question', {}, sets('works', 'coAlarm'))).toEqual({ coAlarm: true })
  expect(noted('question', {}, sets('none', 'coAlarm'), { coAlarm: true })).toEqual({ coAlarm: false })
  expect(noted('question', {}, sets('one', 'systems'))).toEqual({ whichAsked: true })
  expect(noted('question', {}, sets('no', 'resetUsed'))).toEqual({ startLeft: true })
  expect(noted('question', {}, sets('yes', 'resetUsed'), { startLeft: true })).toEqual({ startLeft: false })
  expect(noted('question', {}, YES)).toEqual({})
  // A question about something else takes no CO alarm away, and gives none.
  expect(noted('question', {}, YES, { coAlarm: true })).toEqual({})
  expect(noted('question', {}, answer('works', 'end'))).toEqual({})
  // Only a question tells so.
  expect(noted('look', {}, sets('yes', 'presence'))).toEqual({})
})

it('the room is cold where somebody says so or does not know', () => {
  const indoor = (id: string, before: Partial<Monitor> = {}) =>
    noted('question', { id: 'indoor' }, answer(id, 'end'), before)
  expect(indoor('cold')).toEqual({ indoorAsked: true, cold: true })
  expect(indoor('unsure')).toEqual({ indoorAsked: true, cold: true })
  expect(indoor('warm', { cold: true })).toEqual({ indoorAsked: true, cold: false })
  expect(noted('question', { id: 'other' }, UNSURE)).toEqual({})
})

it('a check counts as an action, a start as a start, and turning off only when it was done', () => {
  expect(noted('check', {}, answer('done', 'end'))).toEqual({ actions: 1 })
  expect(noted('check', {}, answer('done', 'end'), { actions: 9 })).toEqual({})
  const off = { says: ['thermostat-off' as const] }
  expect(noted('check', off, answer('done', 'end'))).toEqual({ actions: 1, off: true })
  expect(noted('check', off, answer('not-now', 'end'))).toEqual({ actions: 1 })
  const start = { turnsOn: true }
  expect(noted('check', start, answer('done', 'end'), { fresh: FRESH })).toEqual({
    ...{ actions: 1, starts: 1, fresh: 0, stale: 1 },
  })
  expect(noted('check', start, answer('done', 'end'), { starts: 3 })).toEqual({ actions: 1, stale: 1 })
  expect(noted('check', start, answer('done', 'end'), { starts: 1 })).toEqual({ actions: 1, starts: 2, stale: 1 })
})

it('a wait of five minutes lets everything be asked again, a shorter one is none', () => {
  expect(noted('wait', { minutes: 5 }, NO, { fresh: FRESH, stale: 1 })).toEqual({ fresh: 0, stale: 2 })
  expect(noted('wait', { minutes: 4 }, NO, { fresh: FRESH, stale: 1 })).toEqual({ fresh: 0 })
  expect(noted('wait', {}, NO, { stale: 1 })).toEqual({})
})

it('what an answer promises is never taken back, nor a second trip', () => {
  const least = (is: string) => answer('a', 'end', { sets: { least: is } })
  expect(noted('question', {}, least('2'))).toEqual({ least: 2 })
  expect(noted('question', {}, least('1'), { least: 2 })).toEqual({})
  expect(noted('question', {}, answer('a', 'end', { sets: { tripped: 'yes' } }))).toEqual({ tripped: true })
  expect(noted('question', {}, answer('a', 'end', { sets: { tripped: 'no' } }), { tripped: true })).toEqual({})
})

it('what is passed through asks nothing, but which of one system there is', () => {
  const passed = { shown: false, when: { systems: ['many'] } }
  expect(noted('question', { ...passed, marks: { systems: 'one' } }, answer('skip', 'end'))).toEqual({
    whichAsked: true,
  })
  expect(noted('question', { ...passed, marks: { systems: 'many' } }, answer('skip', 'end'))).toEqual({})
  expect(noted('question', { shown: false, marks: { systems: 'one' } }, answer('skip', 'end'))).toEqual({})
  expect(noted('gate', { shown: false, hazard: 'gas' }, answer('no', 'end'))).toEqual({})
})

it('hazards are bits in the order in which they are asked', () => {
  expect(hazardsOf(bits(['oil', 'gas']))).toEqual(['gas', 'oil'])
  expect([bits([]), bits(['gas', 'co'])]).toEqual([0, 3])
  expect(hazardsAdmitted({ node: guideNode('x', 'gate', { hazard: 'co' }) }, answer('no', 'end'))).toBe(0)
})

it('two ways are one only where all that was noted on them is the same', () => {
  expect(keyOf({ ...START_MONITOR })).toBe(keyOf(START_MONITOR))
  const keys = (Object.keys(START_MONITOR) as (keyof Monitor)[]).map((name) =>
    keyOf({ ...START_MONITOR, [name]: typeof START_MONITOR[name] === 'number' ? 1 : true }),
  )
  expect(new Set([...keys, keyOf(START_MONITOR)]).size).toBe(keys.length + 1)
  expect(keyOf({ ...START_MONITOR, denied: 1, fresh: 11 })).not.toBe(keyOf({ ...START_MONITOR, denied: 11, fresh: 1 }))
})
