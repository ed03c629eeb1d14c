import { z } from 'zod'
import type { Day } from '@/lib/core/day'
import { typedAddress } from './email-address'
import { type Parsed, parseForm } from './parse-form'
import { typedDay } from './quantities'

function given(say: string) {
  return z.string({ error: say }).min(1, { error: say }).max(4000, { error: say })
}

/** A link to a new password, asked for by e-mail. */
export function parseForgot(form: FormData) {
  return parseForm(form, z.object({ email: typedAddress }))
}

/** A new password, by the link of a mail; what a password must be is said where it is set. */
export function parseRecovery(form: FormData) {
  return parseForm(
    form,
    z.object({ token: given('Follow the link of the mail again.'), 'new-password': z.string().default('') }),
  )
}

/** The link of a mail, confirmed. */
export function parseLink(form: FormData) {
  return parseForm(form, z.object({ token: given('Follow the link of the mail again.') }))
}

/** Somebody to be invited by mail; left empty, the link is passed on by hand. */
export function parseInvitee(form: FormData): Parsed<{ email: string }> {
  return parseForm(form, z.object({ email: z.literal('').or(typedAddress).default('') }))
}

/** How somebody wants to be reminded. */
export interface ReminderWish {
  mail: boolean
  weekday: number
  hour: number
  timeZone: string
}

function isZone(text: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: text }).resolvedOptions().timeZone !== ''
  } catch {
    return false
  }
}

function whole(max: number, say: string) {
  return z
    .string({ error: say })
    .regex(/^\d{1,2}$/, { error: say })
    .transform(Number)
    .refine((value) => value <= max, { error: say })
}

export function parseReminderWish(form: FormData): Parsed<ReminderWish> {
  const schema = z.object({
    mail: z.enum(['yes', 'no'], { error: 'Say whether mails are sent.' }).transform((word) => word === 'yes'),
    weekday: whole(6, 'Choose a weekday.'),
    hour: whole(23, 'Choose an hour.'),
    timeZone: z.string({ error: 'Write a time zone.' }).trim().refine(isZone, {
      error: 'Write a time zone that exists, like America/Chicago.',
    }),
  })
  return parseForm(form, schema)
}

/** A new calendar address: for all homes, or for one. */
export function parseNewFeed(form: FormData): Parsed<{ scope: string }> {
  return parseForm(form, z.object({ scope: z.string().max(64).default('') }))
}

export function parseFeed(form: FormData): Parsed<{ feed: string }> {
  return parseForm(form, z.object({ feed: given('Say which calendar.') }))
}

/**
 * A browser that wants notices. What it gives is an address that this server will call: only one of a public service by
 * name, so that nobody makes it knock on doors inside its own network.
 */
export function parsePushTarget(form: FormData): Parsed<{ endpoint: string; p256dh: string; auth: string }> {
  const say = 'This browser gave no address that notices can be sent to.'
  const key = z.string({ error: say }).regex(/^[\w-]{16,200}={0,2}$/, { error: say })
  const endpoint = z.string({ error: say }).max(2000, { error: say }).refine(isPublicService, { error: say })
  return parseForm(form, z.object({ endpoint, p256dh: key, auth: key }))
}

function isPublicService(text: string): boolean {
  if (!URL.canParse(text)) return false
  const { protocol, hostname, port, username } = new URL(text)
  const isName =
    /^[a-z0-9-]+(\.[a-z0-9-]+)*\.[a-z]{2,}$/.test(hostname) &&
    !/\.(local|internal|localhost|lan|home|arpa)$/.test(hostname)
  return protocol === 'https:' && port === '' && username === '' && isName
}

/** Until when nobody is at home. */
export function parseAway(form: FormData): Parsed<{ until: Day }> {
  return parseForm(form, z.object({ until: typedDay }))
}
