import { z } from 'zod'
import type { Day } from '@/lib/core/day'
import type { Fault } from '@/lib/core/fault'
import { type LogRecord, TASKS, type Task } from '@/lib/core/household'
import { oneOf, type SearchParams } from './homes-query'
import { typedDay, typedMeantDay } from './quantities'

/** One thing to do in one home. */
export interface Ticked {
  householdId: string
  task: Task
  subject: string
}

/** What a page of tick boxes sends: what was done, on which day. */
export interface TickedForm {
  on: Day
  ticked: Ticked[]
  /** Made with the page: the same page sent twice is one record each. */
  once: string
}

/** The value of one tick box; `parseTicked` reads it. */
export function tickValue({ householdId, task, subject }: Ticked): string {
  return [householdId, task, subject].map(encodeURIComponent).join('/')
}

// More than one walk holds; a longer list is split by building.
const MOST_TICKED = 5000

/** A form of tick boxes named `did`, a day `on` and the page's own `once`. All faults at once. */
export function parseTicked(form: FormData): { ok: true; value: TickedForm } | { ok: false; faults: Fault[] } {
  const values = [...new Set(form.getAll('did').map(String))]
  const ticked = values.flatMap((value) => readTick(value) ?? [])
  const faults: Fault[] = []
  if (values.length === 0) faults.push({ path: 'did', say: 'Tick what was done.' })
  if (values.length > MOST_TICKED)
    faults.push({ path: 'did', say: `Record at most ${MOST_TICKED} at once: choose one building first.` })
  if (ticked.length < values.length)
    faults.push({ path: 'did', say: 'A box of this page cannot be read. Load the page again.' })
  const on = typedMeantDay.safeParse(form.get('on') ?? '')
  if (!on.success) faults.push(...on.error.issues.map(({ message }) => ({ path: 'on', say: message })))
  const once = z.string().min(8).max(64).safeParse(form.get('once'))
  if (!once.success) faults.push({ path: '', say: 'This page is incomplete. Load it again.' })
  return on.success && once.success && faults.length === 0
    ? { ok: true, value: { on: on.data, ticked, once: once.data } }
    : { ok: false, faults }
}

function readTick(value: string): Ticked | null {
  try {
    const [householdId, task, subject, ...rest] = value.split('/').map(decodeURIComponent)
    const known = TASKS.find((each) => each === task)
    if (!householdId || !known || !subject || rest.length > 0 || subject.length > 64) return null
    return { householdId, task: known, subject }
  } catch {
    return null
  }
}

const TECHNICIANS: readonly Task[] = ['heating-service', 'cooling-service', 'boiler-service']

/** What a ticked box records on a day. */
export function recordOfTick({ task, subject }: Ticked, on: Day): LogRecord {
  if (task === 'look-at-filter') return { on, kind: 'filter-looked', filter: subject }
  if (task === 'change-filter' || task === 'wash-filter') return { on, kind: 'filter-changed', filter: subject }
  return TECHNICIANS.includes(task)
    ? { on, kind: 'service-done', task, subject, by: 'technician' }
    : { on, kind: 'service-done', task, subject }
}

/** Which building, task and day a page of boxes is asked for by its address; null for each that is not there. */
export function parseBuildingTask(params: SearchParams): {
  building: string | null
  task: Task | null
  on: Day | null
} {
  const on = typedDay.safeParse(oneOf(params, 'on') ?? '')
  return {
    building: oneOf(params, 'building') ?? null,
    task: TASKS.find((task) => task === oneOf(params, 'task')) ?? null,
    on: on.success ? on.data : null,
  }
}

/** The entries that one press recorded, as a hidden field sends them: `home/entry home/entry`. */
export function parseEntries(form: FormData): { ok: true; value: { householdId: string; entryId: string }[] } {
  const entries = String(form.get('entries') ?? '').split(' ')
  return {
    ok: true,
    value: entries.flatMap((pair) => {
      const [householdId, entryId] = pair.split('/')
      return householdId && entryId ? [{ householdId, entryId }] : []
    }),
  }
}
