import type { Request } from 'autocannon'
import type { Household } from '@/lib/core/household'
import { writeHouseholdFile } from '@/lib/forms/household-file'
import { encoded, formOf, sendForm } from '../support/web-form'
import { manyHouseholds } from './many-households'

/** What the names of the homes that are brought begin with. */
export const BROUGHT = 'Brought '
// Stands in the form where each home's own number comes; of its length, and found nowhere else.
const NUMBER = 'number'

/**
 * What sends the n-th household file, as a browser without scripts does: a file was shown by the page that takes one, and
 * is kept from there. The cookie is left to whoever sends it.
 */
export async function broughtHomes(address: string, cookie: string): Promise<(n: number) => Partial<Request>> {
  const [home] = manyHouseholds(1, '2026-11-25') as [Household]
  const file = writeHouseholdFile([{ ...home, id: `brought-${NUMBER}`, name: `${BROUGHT}${NUMBER}`, records: [] }])
  const form = formOf(await sendForm(`${address}/bring`, { text: file }, { headers: { cookie } }), 'text')
  const { body, type } = await encoded(form)
  const headers = { origin: address, 'content-type': type }
  return (n) => ({
    method: 'POST',
    path: '/bring',
    headers,
    body: body.toString().replaceAll(NUMBER, String(n).padStart(NUMBER.length, '0')),
  })
}
