'use server'

import { refresh } from 'next/cache'
import type { Done } from '@/app/parts/action-form'
import { refused } from '@/app/refusal'
import { action } from '@/lib/access/action'
import { createApiToken } from '@/lib/access/api-tokens'
import { MOST_TOKENS, revokeApiToken } from '@/lib/data/api-tokens'
import { parseNewToken, parseToken } from '@/lib/forms/token-form'

export const makeToken = action<{ name: string }, Done>({
  name: 'make-token',
  needs: 'account',
  parse: parseNewToken,
  run: async ({ input, act }) => {
    const made = await createApiToken(act, input.name)
    if (!made.ok && made.because === 'too-many') {
      const say = `You have ${MOST_TOKENS} tokens, and that is as many as there can be. Revoke one that is not used, then make this one.`
      return { ok: false, faults: [{ path: '', say }] }
    }
    if (!made.ok) return refused(made.because)
    refresh()
    const say = `Give this token to ${input.name} now: it is shown this once. Whoever has it can read what is due in your homes.`
    return { ok: true, done: { say, token: made.token } }
  },
})

export const revokeToken = action<{ token: string }, Done>({
  name: 'revoke-token',
  needs: 'account',
  parse: parseToken,
  run: async ({ input, act }) => {
    const revoked = await revokeApiToken(act, input.token)
    if (!revoked.ok) return refused(revoked.because)
    refresh()
    return { ok: true, done: { say: 'Revoked. It reads nothing from now on.' } }
  },
})
