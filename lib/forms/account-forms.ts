import { z } from 'zod'
import type { Fault } from '@/lib/core/fault'
import { typedAddress } from './email-address'
import { localPath } from './local-path'
import { type Parsed, parseForm } from './parse-form'

/** What lib/access finds wrong with an e-mail and a password. */
export type CheckSignUp = (asked: { email: string; password: string }) => Fault[]

const line = z.string().default('')
const path = z.string().optional().transform(localPath)
const token = z
  .string()
  .optional()
  .transform((text) => text || undefined)

function given(say: string) {
  return z.string({ error: say }).min(1, { error: say })
}

/** A name as a log shows it: one line with something to see in it. */
const name = z
  .string({ error: 'Write the name that others in your home know you by.' })
  .trim()
  .refine((text) => text !== '' && text.length <= 60 && !/[\p{Cc}\p{Cs}]/u.test(text), {
    error: 'Write the name that others in your home know you by, in at most 60 characters.',
  })

export interface SignIn {
  email: string
  password: string
  /** Where to go then, a path of this installation. */
  next: string
}

export function parseSignIn(form: FormData): Parsed<SignIn> {
  const schema = z.object({
    email: given('Write the e-mail that you signed up with.'),
    password: given('Write your password.'),
    next: path,
  })
  return parseForm(form, schema)
}

export interface SignUpForm {
  name: string
  email: string
  password: string
  /** The token of an invitation link. */
  invitation?: string | undefined
  /** Where to go then, a path of this installation. */
  next: string
}

export function parseSignUp(check: CheckSignUp) {
  const schema = z.object({ name, email: line, password: line, invitation: token, next: path })
  return (form: FormData): Parsed<SignUpForm> =>
    parseForm(form, schema, (field) => check({ email: field('email'), password: field('password') }))
}

export function parseName(form: FormData) {
  return parseForm(form, z.object({ name }))
}

/** Another address to sign in with, and the password that proves who asks. */
export function parseAddressChange(form: FormData) {
  const schema = z.object({
    email: typedAddress,
    'address-password': given('Write your password: nobody else is to change your address.'),
  })
  return parseForm(form, schema)
}

/** `check` says what is wrong with a new password, or null. */
export function parseNewPassword(check: (password: string) => string | null) {
  const schema = z.object({ 'current-password': given('Write the password that you have now.'), 'new-password': line })
  return (form: FormData) =>
    parseForm(form, schema, (field) => {
      const say = check(field('new-password'))
      return say ? [{ path: 'new-password', say }] : []
    })
}

export function parseDeletion(form: FormData) {
  const schema = z.object({
    'delete-sure': z.literal('yes', { error: 'Tick that everything in the account may go.' }),
    'delete-password': given('Write your password: nobody else is to delete your account.'),
  })
  return parseForm(form, schema)
}

export function parseSignUps(form: FormData) {
  return parseForm(form, z.object({ open: z.enum(['yes', 'no'], { error: 'Say whether sign-ups are open.' }) }))
}

/** A form of nothing but a button. */
export function parseNothing(): Parsed<null> {
  return { ok: true, value: null }
}

export function parseToken(form: FormData) {
  return parseForm(form, z.object({ token: given('The invitation is missing. Follow its link again.') }))
}

export function parseInvitationId(form: FormData) {
  return parseForm(form, z.object({ invitation: given('Say which invitation.') }))
}

export function parseMember(form: FormData) {
  return parseForm(form, z.object({ account: given('Say who.') }))
}

export function parsePurge(form: FormData) {
  const what = { error: 'Choose what to remove.' }
  const schema = z.object({
    'purge-what': z.enum(['people', 'everything'], what),
    'purge-name': given('Type the home’s name, so that nothing goes by a slip.'),
  })
  return parseForm(form, schema)
}
