import { durationInWords } from '@/lib/core/day-words'
import type { Instant } from '@/lib/core/viewer'
import type { Invitation, Offer } from '@/lib/data/invitations'

const DAY_MS = 24 * 60 * 60 * 1000

/** What a link offers, in one sentence for whoever holds it. */
export function offerInWords({ kind, from, householdName, householdId, building }: Offer): string {
  if (kind === 'sign-up') return `${from} invites you to make an account here.`
  if (kind === 'member' && householdId === null)
    return `${from} invites you to look after ${building === null ? 'all their homes' : `their homes in “${building}”`}.`
  if (kind === 'member') return `${from} invites you to look after “${householdName}” together.`
  return `${from} hands “${householdName}” over to you.`
}

/** How long an invitation is good for: `Good for 6 days more.` No day is named, for it would need a time zone. */
export function lastingInWords({ expiresAt }: Invitation, at: Instant): string {
  const days = Math.floor((Date.parse(expiresAt) - Date.parse(at)) / DAY_MS)
  return days < 1 ? 'Good for less than a day.' : `Good for ${durationInWords(days)} more.`
}
