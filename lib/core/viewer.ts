/** Who asks. The role in a household is not here: lib/data looks it up with every question. */
export type Viewer =
  | { kind: 'account'; accountId: string; name: string; administrator: boolean }
  /** Whoever came by the link that an owner gave to one household's renter; `name` is what the owner called it. */
  | { kind: 'link'; linkId: string; householdId: string; name: string }
  /** A job or the command line of whoever hosts it: sees everything. */
  | { kind: 'system' }
  /** Nobody signed in, looking around the sample: sees nothing of the database. */
  | { kind: 'sample' }

/** `YYYY-MM-DDTHH:MM:SS.mmmZ`: sorts as text. */
export type Instant = string

export const DOORS = ['page', 'file', 'link', 'mail', 'program', 'command'] as const
/** The way by which something came in; the log shows it. */
export type Door = (typeof DOORS)[number]

/** Who does something, when, and through which door: what every write is told. */
export interface Act {
  viewer: Viewer
  at: Instant
  door: Door
}

export const ROLES = ['owner', 'adult', 'manager', 'technician'] as const
export type Role = (typeof ROLES)[number]
/** What somebody is in a household: a member's role, or a renter by a link. */
export type Standing = Role | 'renter'

export const DEEDS = ['see', 'record', 'manage', 'own'] as const
/** see: read it · record: say what was done, put off · manage: change what is described · own: people, hand over, close. */
export type Deed = (typeof DEEDS)[number]

const MAY: Record<Standing, readonly Deed[]> = {
  owner: ['see', 'record', 'manage', 'own'],
  adult: ['see', 'record', 'manage'],
  manager: ['see', 'record', 'manage'],
  technician: ['see'],
  renter: ['see', 'record'],
}

/** Whether a role may do something in its household. */
export function may(role: Standing, deed: Deed): boolean {
  return MAY[role].includes(deed)
}

/** The roles that may do something, for a question to the database. */
export function rolesThatMay(deed: Deed): Role[] {
  return ROLES.filter((role) => may(role, deed))
}
