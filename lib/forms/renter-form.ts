import { z } from 'zod'
import { addYears, type Day } from '@/lib/core/day'
import type { Fault } from '@/lib/core/fault'
import { typedDay } from './quantities'

type Parsed<T> = { ok: true; value: T } | { ok: false; faults: Fault[] }

export const LONGEST_MESSAGE = 2000
const LONGEST_YEARS = 2

/** Text of people with its lines kept, without what no keyboard types. */
function plainText(longest: number, missing: string) {
  return z
    .string({ error: missing })
    .transform((text) =>
      text
        .replaceAll('\r\n', '\n')
        .replaceAll(/[^\P{Cc}\n\t]|\p{Cs}/gu, '')
        .trim(),
    )
    .pipe(
      z
        .string()
        .min(1, { error: missing })
        .max(longest, { error: `Write at most ${longest} signs; the rest can go into a second message.` }),
    )
}

/** A new renter's link: what the owner calls whoever gets it, and its last day; `today` is today in that home. */
export function parseNewLink(form: FormData, today: Day): Parsed<{ name: string; lastDay: Day }> {
  const latest = addYears(today, LONGEST_YEARS)
  const name = plainText(60, 'Write who gets the link, like “Unit 2”.').transform((text) =>
    text.replaceAll(/\s+/g, ' '),
  )
  const lastDay = typedDay
    .refine((day) => day >= today, {
      error: 'Choose today or a later day: a link cannot have ended before it is made.',
    })
    .refine((day) => day <= latest, { error: `Choose ${latest} or an earlier day: after that make a new one.` })
  return parsed(z.object({ name, lastDay }).safeParse(Object.fromEntries(form)))
}

/** A message to whoever looks after the home. */
export function parseMessage(form: FormData): Parsed<{ text: string }> {
  const text = plainText(LONGEST_MESSAGE, 'Write what they should know.')
  return parsed(z.object({ text }).safeParse(Object.fromEntries(form)))
}

function parsed<T>(result: z.ZodSafeParseResult<T>): Parsed<T> {
  if (result.success) return { ok: true, value: result.data }
  return { ok: false, faults: result.error.issues.map(({ path, message }) => ({ path: path.join('.'), say: message })) }
}
