'use server'

import { redirect } from 'next/navigation'
import { tables } from '@/content/tables'
import { action } from '@/lib/access/action'
import { today } from '@/lib/clock'
import { type HomeSheet, sheetOf } from '@/lib/core/sheet'
import { importHouseholds } from '@/lib/data/import'
import { type Brought, parseBringForm } from '@/lib/forms/bring-form'
import { parseHouseholdFile } from '@/lib/forms/household-file'

/** What was brought, drawn up; nothing of it is stored. */
export interface Shown {
  /** What the file held, so that it can be kept without choosing it again. */
  text: string
  sheets: HomeSheet[]
  /** Homes of the file that are not drawn up, because it holds so many. */
  more: number
}

// A page of more homes than this is no longer read by anybody.
const SHEETS = 12

async function read({ file, text }: Brought) {
  const input = file ? new Uint8Array(await file.arrayBuffer()) : text
  return { input, parsed: parseHouseholdFile(input, today) }
}

export const showBrought = action<Brought, Shown>({
  name: 'bring-show',
  needs: 'nobody',
  parse: parseBringForm,
  run: async ({ input: brought }) => {
    const { input, parsed } = await read(brought)
    if (!parsed.ok) return parsed
    const { households } = parsed
    const sheets = households.slice(0, SHEETS).map((home) => sheetOf(home, tables, today(home.timeZone)))
    const text = typeof input === 'string' ? input : new TextDecoder().decode(input)
    return { ok: true, done: { text, sheets, more: households.length - sheets.length } }
  },
})

export const keepBrought = action<Brought>({
  name: 'bring-keep',
  needs: 'account',
  parse: parseBringForm,
  run: async ({ input: brought, act }) => {
    const { parsed } = await read(brought)
    if (!parsed.ok) return parsed
    const imported = await importHouseholds({ ...act, door: 'file' }, parsed.households)
    if (!imported.ok) return imported
    const [only, ...others] = imported.ids
    redirect(only !== undefined && others.length === 0 ? `/home/${only}` : '/')
  },
})
