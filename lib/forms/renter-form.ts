import { z } from 'zod'
import { addYears, type Day } from '@/lib/core/day'
import { type Parsed, parseForm } from './parse-form'
import { typedDay } from './quantities'

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
  return parseForm(form, z.object({ name, lastDay }))
}

/** A message to whoever looks after the home. */
export function parseMessage(form: FormData): Parsed<{ text: string }> {
  const text = plainText(LONGEST_MESSAGE, 'Write what they should know.')
  return parseForm(form, z.object({ text }))
}
