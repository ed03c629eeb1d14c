import { addDays } from '@/lib/core/day'
import { tickValue } from '@/lib/forms/ticked-form'

const ON = '2026-11-25'

/** The n-th record of a run: each of its own home and day, so that none is the same as another. */
export function nthRecord(homes: readonly string[], n: number): { home: string; on: string; body: string } {
  const home = homes[n % homes.length] as string
  const on = addDays(ON, -1 - (Math.floor(n / homes.length) % 3000))
  const did = tickValue({ householdId: home, task: 'alarm-test', subject: 'co' })
  return { home, on, body: new URLSearchParams({ did, on, once: `record ${n}` }).toString() }
}

/** What it is sent with, by the account of a cookie. */
export function recordHeaders(cookie: string, origin: string): Record<string, string> {
  return { cookie, origin, 'content-type': 'application/x-www-form-urlencoded' }
}
