import { z } from 'zod'
import { type Parsed, parseForm } from './parse-form'

const SAY = 'Write which program it is for, like “Kitchen display”, in at most 60 characters.'

/** A new token: what the person calls it. */
export function parseNewToken(form: FormData): Parsed<{ name: string }> {
  const name = z
    .string({ error: SAY })
    .trim()
    .refine((text) => text !== '' && text.length <= 60 && !/[\p{Cc}\p{Cs}]/u.test(text), { error: SAY })
  return parseForm(form, z.object({ name }))
}

/** One of the account's tokens. */
export function parseToken(form: FormData): Parsed<{ token: string }> {
  const say = 'Say which token.'
  return parseForm(form, z.object({ token: z.string({ error: say }).min(1, { error: say }).max(64, { error: say }) }))
}
