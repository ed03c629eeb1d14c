/**
 * What somebody must be: nobody in particular · signed in · in this household: anybody who may see it, record in it
 * (`member`), change what is described (`manage`), decide about it (`owner`) · the installation's administrator.
 * `token` is a program that sends one: it reads one account's homes, and no session opens that.
 * A renter's link opens only what names it: `visit` is `see` and `resident` is `member`, each also by a link.
 */
export const NEEDS = [
  'nobody',
  'account',
  'see',
  'visit',
  'member',
  'resident',
  'manage',
  'owner',
  'administrator',
  'token',
] as const
export type Need = (typeof NEEDS)[number]

export interface Registered {
  name: string
  kind: 'action' | 'handler'
  needs: Need
}

const registered = new Map<string, Registered>()

/** Enters what the wrapper made, so that a test can walk all of it. */
export function register(entry: Registered): void {
  registered.set(`${entry.kind} ${entry.name}`, entry)
}

/** Everything that the wrapper made, in the modules loaded so far. */
export function listRegistered(): Registered[] {
  return [...registered.values()]
}
