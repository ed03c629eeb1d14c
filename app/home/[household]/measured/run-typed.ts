import { redirect } from 'next/navigation'
import { refused } from '@/app/refusal'
import type { Asked, Ran } from '@/lib/access/action'
import { today } from '@/lib/clock'
import type { Day } from '@/lib/core/day'
import type { Household, Reading } from '@/lib/core/household'
import { readingInWords } from '@/lib/core/reading-words'
import { getHousehold } from '@/lib/data/households'
import { changeReadings, listReadings } from '@/lib/data/readings'
import type { Read, Typed } from '@/lib/forms/describe/answers'
import type { TypedAnswer } from './typed-answer'
import { withReadings } from './with-readings'

/** What the rows of a form come to. */
export interface TypedReadings {
  fresh: Reading[]
  /** The rows with what was filled in for them. */
  typed?: Typed
  lines?: string[]
  notes?: string[]
}

/** Rows that come to their readings and no more. */
export function onlyFresh(read: Read<Reading[]>): Read<TypedReadings> {
  return read.ok ? { ok: true, value: { fresh: read.value } } : read
}

const MOST_FAULTS = 12
const MORE_ROWS = 6

/** Shows what the rows of a form come to, and saves them when that was seen. */
export async function runTyped(
  { input: { button: pressed, household: _, ...typed }, act, viewer, householdId }: Asked<Typed>,
  read: (typed: Typed, home: Household, on: Day) => Read<TypedReadings>,
): Promise<Ran<TypedAnswer>> {
  const button = pressed?.[0]
  if (button === 'again' || button === 'more') {
    const more = button === 'more' ? MORE_ROWS : 0
    return { ok: true, done: { kind: 'again', more, typed, lines: [], notes: [], changes: [] } }
  }
  const { household: home } = await getHousehold(viewer, householdId)
  const on = today(home.timeZone)
  const rows = read(typed, home, on)
  if (!rows.ok) return rows
  const { fresh, lines = fresh.map((reading) => readingInWords(home, reading)), notes = [] } = rows.value
  const standing = await listReadings(viewer, householdId)
  const { replacement, changes, faults } = withReadings(home, standing, { fresh, on })
  if (faults.length > 0) return { ok: false, faults: faults.slice(0, MOST_FAULTS).map((say) => ({ path: '', say })) }
  const { gone, rest } = replacement
  if (button !== 'save') {
    const replaced = gone.map(({ reading }) => `It takes the place of: ${readingInWords(home, reading)}.`)
    const left = rest.map((reading) => `Of that stays, by its share of the days: ${readingInWords(home, reading)}.`)
    const said = { lines, notes: [...notes, ...replaced, ...left], changes }
    return { ok: true, done: { kind: 'preview', more: 0, typed: rows.value.typed ?? typed, ...said } }
  }
  const saved = await changeReadings(act, householdId, {
    kind: fresh[0]?.source ?? 'bill',
    add: [...rest, ...fresh],
    remove: gone.map(({ id }) => id),
  })
  if (saved.ok) redirect(`/home/${householdId}/measured?did=${saved.id}`)
  if (saved.because === 'changed')
    return {
      ok: false,
      faults: [{ path: '', say: 'The readings were changed meanwhile. Nothing is lost: send it again.' }],
    }
  return refused(saved.because)
}
