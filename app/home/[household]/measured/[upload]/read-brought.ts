import { tables } from '@/content/tables'
import type { Day } from '@/lib/core/day'
import type { Household, Reading, System } from '@/lib/core/household'
import { coverOfReport, QUANTITIES, type StandingReading } from '@/lib/core/reading-spans'
import { coolBlows, heatBlows, movesAir } from '@/lib/core/runtime'
import type { Spooled } from '@/lib/data/spool'
import type { ExportChoices } from '@/lib/forms/thermostat/choices'
import { type ExportHead, HEAD_BYTES, readHead } from '@/lib/forms/thermostat/head'
import { type Understood, understandExport } from '@/lib/forms/thermostat/understand'
import { type WithReadings, withReadings } from '../with-readings'

/** A file that was brought, as it was understood, and what keeping it would do. */
export interface Brought {
  system: System
  head: ExportHead
  understood: Understood
  readings: Reading[]
  /** Null while something is wrong with the file. */
  effect: WithReadings | null
  faults: string[]
  notes: string[]
}

export type ReadBrought = { ok: true; value: Brought } | { ok: false; say: string }

/** Reads a file that lies here by somebody's choices. Writes nothing. */
export async function readBrought(
  file: Spooled,
  choices: ExportChoices,
  { home, standing, on }: { home: Household; standing: readonly StandingReading[]; on: Day },
): Promise<ReadBrought> {
  const system = home.systems.find(({ id }) => id === choices.system) ?? home.systems[0]
  if (!system) return { ok: false, say: 'This home has no system that could have been measured. Describe it first.' }
  const head = readHead(await file.head(HEAD_BYTES))
  if (!head.ok) return head
  const understood = await understandExport(file.chunks(), head.value, {
    choices,
    homeZone: home.timeZone,
    today: on,
    fanRule: {
      heatBlower: heatBlows(system) ? tables.figures.heatingBlowerFactor.value : 0,
      coolBlows: coolBlows(system),
    },
  })
  const { readings, notes } = readingsFor(system, understood)
  const faults = [...understood.faults]
  if (faults.length === 0 && readings.length === 0)
    faults.push(`Nothing in this file is about ${system.name}: it has no such hours. Choose another system.`)
  const effect =
    faults.length > 0 ? null : withReadings(home, standing, { fresh: readings, covers: [coverOfReport(readings)], on })
  return {
    ok: true,
    value: {
      ...{ system, head: head.value, understood, readings, effect },
      faults: [...faults, ...(effect?.faults ?? [])],
      notes: [...understood.notes, ...notes],
    },
  }
}

/** The pieces as readings of a system: hours that it cannot have are left out, and said. */
function readingsFor(system: System, { pieces }: Understood): { readings: Reading[]; notes: string[] } {
  const lacks = {
    heatHours: system.heat === undefined,
    coolHours: system.cool === undefined,
    fanHours: !movesAir(system),
  }
  const words = { heatHours: 'heating', coolHours: 'cooling', fanHours: 'a blower' }
  const notes = QUANTITIES.filter((quantity) => lacks[quantity] && pieces.some((piece) => (piece[quantity] ?? 0) > 0))
  const readings = pieces.flatMap(({ from, to, ...hours }): Reading[] => {
    const kept = QUANTITIES.filter((quantity) => hours[quantity] !== undefined && !lacks[quantity])
    if (kept.length === 0) return []
    const own = Object.fromEntries(kept.map((quantity) => [quantity, hours[quantity]]))
    return [{ system: system.id, from, to, source: 'thermostat', ...own }]
  })
  return {
    readings,
    notes: notes.map(
      (quantity) => `${system.name} has no ${words[quantity].replace('a ', '')}: those hours are left out.`,
    ),
  }
}
