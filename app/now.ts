import { connection } from 'next/server'
import * as clock from '@/lib/clock'
import type { Instant } from '@/lib/core/viewer'
import { instant } from '@/lib/data/instant'

/** The moment of this request; a page that asks is rendered for each request, never at build time. */
export async function now(): Promise<Instant> {
  await connection()
  return instant(clock.now())
}
