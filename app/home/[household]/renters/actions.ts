'use server'

import { redirect } from 'next/navigation'
import { action } from '@/lib/access/action'
import { createRenterLink } from '@/lib/access/links'
import { today } from '@/lib/clock'
import { getHousehold } from '@/lib/data/households'
import { endOfDay } from '@/lib/data/instant'
import { markMessageRead } from '@/lib/data/messages'
import { revokeRenterLink } from '@/lib/data/renter-links'
import { parseNewLink } from '@/lib/forms/renter-form'

/** A link just made: shown this once. */
export interface MadeLink {
  link: string
  name: string
}

/** Makes a renter's link; the answer holds it, and nothing else ever does. */
export const makeLink = action<FormData, MadeLink>({
  name: 'renter-link-make',
  needs: 'owner',
  // Today is the home's own day, which only its row knows.
  parse: (form) => ({ ok: true, value: form }),
  run: async ({ input, act, viewer, householdId }) => {
    const { timeZone } = (await getHousehold(viewer, householdId)).household
    const parsed = parseNewLink(input, today(timeZone))
    if (!parsed.ok) return parsed
    const { name, lastDay } = parsed.value
    const made = await createRenterLink(act, { householdId, name, lastDay, expiresAt: endOfDay(lastDay, timeZone) })
    if (made.ok) return { ok: true, done: { link: made.link, name } }
    const say =
      made.because === 'closed'
        ? 'This home is closed: open it again first.'
        : 'This home has as many open links as can be told apart. Take one back first.'
    return { ok: false, faults: [{ path: '', say }] }
  },
})

/** Takes a link back: it opens nothing from this moment. */
export const takeLinkBack = action<string>({
  name: 'renter-link-revoke',
  needs: 'owner',
  parse: (form) => ({ ok: true, value: String(form.get('link') ?? '') }),
  run: async ({ input, act, householdId }) => {
    const revoked = await revokeRenterLink(act, householdId, input)
    if (!revoked.ok) return { ok: false, faults: [{ path: '', say: 'This link was taken back already.' }] }
    redirect(`/home/${householdId}/renters?did=revoked`)
  },
})

/** Says that a message was read. */
export const readMessage = action<string>({
  name: 'message-read',
  needs: 'manage',
  parse: (form) => ({ ok: true, value: String(form.get('message') ?? '') }),
  run: async ({ input, act, householdId }) => {
    await markMessageRead(act, householdId, input)
    redirect(`/home/${householdId}/renters#messages`)
  },
})
