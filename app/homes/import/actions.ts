'use server'

import { redirect } from 'next/navigation'
import { action } from '@/lib/access/action'
import { saveUnits } from '@/lib/data/save-units'
import { type Matching, matchColumns, parseMatching } from '@/lib/forms/unit-columns'
import { parseUnitsForm, type UnitsForm } from '@/lib/forms/units-form'
import { readUnitsTable, type SheetTable } from '@/lib/forms/units-table'
import { type Prepared, prepareUnits } from './prepare'
import { rowsInWords } from './rows-in-words'

/** A sheet that was read, and what it would do; nothing of it is stored. */
export interface Shown {
  /** What stood in the file, so that it can be kept without choosing it again. */
  text: string
  headings: string[]
  /** The first cells of each column. */
  samples: string[]
  matching: Matching
  place: string
  timeZone: string
  needsPlace: boolean
  rows: number
  /** Everything that is wrong, with the rows where it is so. */
  faults: { say: string; where: string }[]
  /** Faults that are not listed here, because there are so many. */
  moreFaults: number
  counts: { fresh: number; changed: number; same: number; buildings: number }
  lines: Prepared['lines']
  moreLines: number
  /** Why nothing was kept although it was asked for. */
  say: string | null
}

// A page of more lines than this is no longer read by anybody.
const LINES = 40
const FAULTS = 500
const SAMPLES = 3
const TRIES = 3

export const bringUnits = action<UnitsForm, Shown>({
  name: 'bring-units',
  needs: 'account',
  parse: parseUnitsForm,
  run: async ({ input, act, viewer }) => {
    const read = readUnitsTable(input.file ? new Uint8Array(await input.file.arrayBuffer()) : input.text)
    if (!read.ok) return read
    const table = read.value
    const matching =
      input.columns?.length === table.headings.length ? parseMatching(input.columns) : matchColumns(table.headings)
    const asked = { matching, place: input.place, timeZone: input.timeZone }
    for (let attempt = 1; ; attempt++) {
      const prepared = await prepareUnits(viewer, table, asked)
      const whole = prepared.faults.size === 0 && !prepared.needsPlace
      if (!input.keep || !whole) {
        const say = input.keep && prepared.needsPlace ? 'Say first where the new units stand.' : null
        return { ok: true, done: shown(table, input, { matching, prepared, say }) }
      }
      const saved = await saveUnits({ ...act, door: 'file' }, prepared)
      if (saved.ok) redirect(`/homes/import?${broughtParams(prepared)}`)
      // Somebody wrote to one of the homes in these seconds: read against what stands now.
      if (saved.because === 'changed' && attempt < TRIES) continue
      const say = 'One of these homes was changed at the same moment. Nothing was kept; press again.'
      return { ok: true, done: shown(table, input, { matching, prepared, say }) }
    }
  },
})

function broughtParams({ fresh, changed, same }: Prepared): URLSearchParams {
  return new URLSearchParams({ fresh: String(fresh.length), changed: String(changed.length), same: String(same) })
}

function shown(
  { text, headings, rows }: SheetTable,
  { place, timeZone }: UnitsForm,
  { matching, prepared, say }: { matching: Matching; prepared: Prepared; say: string | null },
): Shown {
  const faults = [...prepared.faults].map(([say, lines]) => ({ say, where: rowsInWords(lines) }))
  return {
    ...{ text, headings, matching, place, timeZone, say },
    samples: headings.map((_, i) =>
      rows
        .flatMap(({ cells }) => cells[i]?.trim() || [])
        .slice(0, SAMPLES)
        .join(', ')
        .slice(0, 80),
    ),
    needsPlace: prepared.needsPlace,
    rows: rows.length,
    faults: faults.slice(0, FAULTS),
    moreFaults: Math.max(0, faults.length - FAULTS),
    counts: {
      fresh: prepared.fresh.length,
      changed: prepared.changed.length,
      same: prepared.same,
      buildings: new Set(prepared.lines.map(({ building }) => building)).size,
    },
    lines: prepared.lines.slice(0, LINES),
    moreLines: Math.max(0, prepared.lines.length - LINES),
  }
}
