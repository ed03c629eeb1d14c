import fc from 'fast-check'
import { expect, test } from 'vitest'
import { passwordFault } from '@/lib/access/passwords'
import { signUpFaults } from '@/lib/access/sign-up'
import * as forms from '@/lib/forms/account-forms'
import { localPath } from '@/lib/forms/local-path'

function form(fields: Record<string, string | File>): FormData {
  const made = new FormData()
  for (const [name, value] of Object.entries(fields)) made.set(name, value)
  return made
}

test('all faults of a sign-up come at once, from the fields and from the rules', () => {
  const parsed = forms.parseSignUp(signUpFaults)(form({ name: ' ', email: 'x', password: 'short' }))
  expect(parsed.ok ? [] : parsed.faults.map(({ path }) => path)).toEqual(['name', 'email', 'password'])
  const empty = forms.parseSignUp(signUpFaults)(form({}))
  expect(empty.ok ? [] : empty.faults.map(({ path }) => path)).toEqual(['name', 'email', 'password'])
})

test('a new password is judged also where the one of now is missing', () => {
  const parsed = forms.parseNewPassword(passwordFault)(form({ 'new-password': 'short' }))
  expect(parsed.ok ? [] : parsed.faults.map(({ path }) => path)).toEqual(['current-password', 'new-password'])
})

test('an empty invitation is none', () => {
  const asked = { name: 'Ann', email: 'ann@example.org', password: 'four words are enough', invitation: '' }
  expect(forms.parseSignUp(signUpFaults)(form(asked))).toMatchObject({ ok: true, value: { invitation: undefined } })
})

test('a path to come back to leads nowhere else, whatever is asked', () => {
  const nasty = fc
    .array(fc.constantFrom('/', '\\', '.', ':', '@', '?', '#', '%2f', '\t', '\n', 'http:', 'elsewhere.example', 'home'))
    .map((parts) => parts.join(''))
  fc.assert(
    fc.property(fc.oneof(nasty, fc.string({ unit: 'binary' }), fc.webUrl()), (asked) => {
      const path = localPath(asked)
      const { origin } = new URL(path, 'https://plenum.example')
      return origin === 'https://plenum.example' && /^\/(?!\/)/.test(path) && localPath(path) === path
    }),
  )
  expect(localPath('/home/x/people?a=1')).toBe('/home/x/people?a=1')
  expect(localPath('/.//elsewhere.example')).toBe('/')
})

const PARSERS = {
  signIn: forms.parseSignIn,
  signUp: forms.parseSignUp(signUpFaults),
  name: forms.parseName,
  newPassword: forms.parseNewPassword(passwordFault),
  deletion: forms.parseDeletion,
  signUps: forms.parseSignUps,
  token: forms.parseToken,
  invitation: forms.parseInvitationId,
  member: forms.parseMember,
  purge: forms.parsePurge,
}
const FIELDS =
  'email password next name invitation current-password new-password delete-sure delete-password open token account purge-what purge-name __proto__ constructor'

test.each(Object.entries(PARSERS))('no form breaks the parser “%s”: it gives values or sentences', (_, parse) => {
  const value = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc.constantFrom('yes', 'no', 'people', 'everything', '', 'x'.repeat(5000)),
  )
  const field = fc.oneof(fc.constantFrom(...FIELDS.split(' ')), fc.string())
  fc.assert(
    fc.property(fc.array(fc.tuple(field, value)), fc.boolean(), (fields, withFile) => {
      const made = new FormData()
      for (const [name, text] of fields) made.append(name, text)
      if (withFile) made.append('name', new File(['x'], 'x'))
      const parsed = parse(made)
      if (parsed.ok) return
      expect(parsed.faults.length).toBeGreaterThan(0)
      for (const { say } of parsed.faults) expect(say).toMatch(/^[A-Z].*\.$/)
    }),
  )
})
