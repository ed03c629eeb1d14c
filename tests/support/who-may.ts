import type { Need } from '@/lib/access/registry'

/** Everybody there is to a home: two without a part in it, a link, four roles, and whoever hosts it. */
export const WHO = ['nobody', 'stranger', 'renter', 'technician', 'adult', 'manager', 'owner', 'administrator'] as const
export type Who = (typeof WHO)[number]

const ACCOUNTS = ['stranger', 'technician', 'adult', 'manager', 'owner', 'administrator'] as const
const MEMBERS = ['technician', 'adult', 'manager', 'owner'] as const
const WRITERS = ['adult', 'manager', 'owner'] as const

/** Who may pass which need, for one home: the one table that the walls are held against. */
export const PASSES: Record<Need, readonly Who[]> = {
  nobody: WHO,
  account: ACCOUNTS,
  see: MEMBERS,
  visit: ['renter', ...MEMBERS],
  member: WRITERS,
  resident: ['renter', ...WRITERS],
  manage: WRITERS,
  owner: ['owner'],
  administrator: ['administrator'],
  // No session is a token.
  token: [],
}

/** What somebody who may not is told: to sign in, that there is nothing here, or that his part does not include it. */
export function barredAs(needs: Need, who: Who): 'signed out' | 'nothing here' | 'not allowed' {
  if (who === 'nobody' || who === 'renter' || needs === 'token') return 'signed out'
  if (needs === 'administrator' || !MEMBERS.some((member) => member === who)) return 'nothing here'
  return 'not allowed'
}
