'use server'

import { redirect } from 'next/navigation'
import { tables } from '@/content/tables'
import { action } from '@/lib/access/action'
import { now, today } from '@/lib/clock'
import { type HomeSheet, sheetOf } from '@/lib/core/sheet'
import { importArchive } from '@/lib/data/brought-photos'
import { importHouseholds } from '@/lib/data/import'
import { type Brought, parseBringForm } from '@/lib/forms/bring-form'
import { readBrought } from '@/lib/forms/household-archive'

/** What was brought, drawn up; nothing of it is stored. */
export interface Shown {
  /** What the file held, so that it can be kept without choosing it again. */
  text: string
  sheets: HomeSheet[]
  /** Homes of the file that are not drawn up, because it holds so many. */
  more: number
  /** How many photos the archive held; they are kept with the archive only. */
  photos: number
}

// A page of more homes than this is no longer read by anybody.
const SHEETS = 12
// Nor one of more faults; a file can be made to have a hundred thousand.
const FAULTS = 500

async function read({ file, text }: Brought) {
  const input = file ? new Uint8Array(await file.arrayBuffer()) : text
  const brought = readBrought(input, { on: today, now: now().toISOString() })
  if (brought.ok || brought.faults.length <= FAULTS) return brought
  const more = brought.faults.length - FAULTS
  return {
    ok: false as const,
    faults: [...brought.faults.slice(0, FAULTS), { path: '', say: `${more} more are not shown. Mend these first.` }],
  }
}

export const showBrought = action<Brought, Shown>({
  name: 'bring-show',
  needs: 'nobody',
  parse: parseBringForm,
  run: async ({ input: brought }) => {
    const parsed = await read(brought)
    if (!parsed.ok) return parsed
    const { households, photos, json } = parsed
    const sheets = households.slice(0, SHEETS).map((home) => sheetOf(home, tables, today(home.timeZone)))
    const more = households.length - sheets.length
    return { ok: true, done: { text: json, sheets, more, photos: photos.length } }
  },
})

export const keepBrought = action<Brought>({
  name: 'bring-keep',
  needs: 'account',
  parse: parseBringForm,
  run: async ({ input: brought, act }) => {
    const parsed = await read(brought)
    if (!parsed.ok) return parsed
    const { households, photos } = parsed
    const [home] = households
    const byFile = { ...act, door: 'file' } as const
    const imported =
      home && photos.length > 0 ? await importArchive(byFile, home, photos) : await importHouseholds(byFile, households)
    if (!imported.ok) return imported
    const [only, ...others] = imported.ids
    redirect(only !== undefined && others.length === 0 ? `/home/${only}` : '/')
  },
})
