'use server'

import { action } from '@/lib/access/action'
import { publicUrl } from '@/lib/access/public-url'
import { hashToken, newToken } from '@/lib/access/tokens'
import { shareBrief } from '@/lib/data/briefs'
import { later } from '@/lib/data/instant'

/** Long enough for a visit and what comes after it. */
const SHARE_SECONDS = 14 * 24 * 60 * 60

const GONE = {
  ok: false,
  faults: [{ path: '', say: 'This brief is not yours to share. Go back to the home.' }],
} as const
const briefId = (form: FormData) => ({ ok: true, value: String(form.get('brief') ?? '') }) as const

/** Makes a link that shows this one page, to whoever has it, for two weeks. It is given once. */
export const shareByLink = action<string, string>({
  name: 'brief-share',
  needs: 'member',
  parse: briefId,
  run: async ({ input: id, act, householdId }) => {
    const token = newToken()
    const link = { tokenHash: hashToken(token), expiresAt: later(act.at, SHARE_SECONDS) }
    const shared = await shareBrief(act, householdId, id, link)
    return shared.ok ? { ok: true, done: `${publicUrl()}/b/${token}` } : { ok: false, faults: [...GONE.faults] }
  },
})

/** Ends the link. */
export const endLink = action<string, string>({
  name: 'brief-unshare',
  needs: 'member',
  parse: briefId,
  run: async ({ input: id, act, householdId }) => {
    const ended = await shareBrief(act, householdId, id, null)
    return ended.ok ? { ok: true, done: '' } : { ok: false, faults: [...GONE.faults] }
  },
})
