import { z } from 'zod'
import { addDays, type Day } from '@/lib/core/day'
import type { Fault } from '@/lib/core/fault'
import { DOERS, LIGHTS, type LogRecord, MEDIA, TASKS, type Task } from '@/lib/core/household'
import { typedDay, typedPastDay } from './quantities'

type Parsed<T> = { ok: true; value: T } | { ok: false; faults: Fault[] }

const TECHNICIANS: readonly Task[] = ['heating-service', 'cooling-service', 'boiler-service']

/** A field left empty is a field not sent. */
function optional<T extends z.ZodType>(schema: T) {
  return z.preprocess((typed) => (typed === '' || typed === null ? undefined : typed), schema.optional())
}

const INCOMPLETE = 'This page is incomplete. Go back to the list and choose again.'
const subject = z.string({ error: INCOMPLETE }).min(1, { error: INCOMPLETE }).max(64, { error: INCOMPLETE })
const light = optional(z.enum(LIGHTS, { error: 'Choose how much light came through, or leave it open.' }))
const RATING = 'Write the rating as a whole number from 1 to 20, or leave it open.'
const task = z.enum(TASKS, { error: 'This is not a task that we know. Go back to the list and choose again.' })

/** What was done, as the form of one item sends it; `today` is today in the household's zone. */
export function parseRecordForm(form: FormData, today: Day): Parsed<LogRecord> {
  const schema = z.object({
    task,
    subject,
    on: typedPastDay(today),
    light,
    medium: optional(z.enum(MEDIA, { error: 'Choose what was fitted, or leave it open.' })),
    merv: optional(
      z.coerce.number({ error: RATING }).int({ error: RATING }).min(1, { error: RATING }).max(20, { error: RATING }),
    ),
    by: optional(z.enum(DOERS, { error: 'Say who did it, or leave it open.' })),
  })
  return parsed(schema.safeParse(Object.fromEntries(form)), (sent) => {
    const { on, merv } = sent
    if (sent.task === 'look-at-filter')
      return { on, kind: 'filter-looked', filter: sent.subject, ...(sent.light && { light: sent.light }) }
    if (sent.task === 'change-filter' || sent.task === 'wash-filter') {
      const fitted = sent.medium && { medium: sent.medium, ...(merv !== undefined && { merv }) }
      return {
        on,
        kind: 'filter-changed',
        filter: sent.subject,
        ...(sent.light && { light: sent.light }),
        ...(fitted && { fitted }),
      }
    }
    const by = TECHNICIANS.includes(sent.task) ? 'technician' : sent.by
    return { on, kind: 'service-done', task: sent.task, subject: sent.subject, ...(by && { by }) }
  })
}

/** An item to be put off until a day: one of the offered numbers of days, or a day of one's own. */
export function parsePutOffForm(form: FormData, today: Day): Parsed<{ task: Task; subject: string; until: Day }> {
  const schema = z.object({
    task,
    subject,
    days: z.enum(['7', '14', '30', 'until'], { error: 'Choose for how long.' }),
    until: z.unknown().optional(),
  })
  const sent = schema.safeParse(Object.fromEntries(form))
  if (!sent.success) return parsed(sent, () => never())
  const { days } = sent.data
  if (days !== 'until') return { ok: true, value: { ...sent.data, until: addDays(today, Number(days)) } }
  return parsed(z.object({ until: typedDay }).safeParse({ until: sent.data.until }), ({ until }) => ({
    ...sent.data,
    until,
  }))
}

function never(): never {
  throw new Error('a form with faults has no value')
}

function parsed<S, T>(result: z.ZodSafeParseResult<S>, make: (sent: S) => T): Parsed<T> {
  if (result.success) return { ok: true, value: make(result.data) }
  return { ok: false, faults: result.error.issues.map(({ path, message }) => ({ path: path.join('.'), say: message })) }
}
