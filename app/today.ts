import { connection } from 'next/server'
import * as clock from '@/lib/clock'

/** The household's calendar day now, `YYYY-MM-DD`; a page that asks is rendered for each request, never at build time. */
export async function today(timeZone: string): Promise<string> {
  await connection()
  return clock.today(timeZone)
}
