import { dayText } from '@/lib/core/day'
import { RUNS, type Run } from '@/lib/core/run-rows'
import { zoneClock } from '@/lib/core/zone-clock'
import { parseChoices } from '@/lib/forms/thermostat/choices'
import { HEAD_BYTES, readHead } from '@/lib/forms/thermostat/head'
import { type Understood, understandExport } from '@/lib/forms/thermostat/understand'

// Invented exports with a truth that is known: no maker's columns or formats.

export const ZONE = 'America/Chicago'

/** One interval as it happened: UTC seconds, and seconds of each run. */
export interface Slot {
  at: number
  heat: number
  cool: number
  fan: number
}

/** The slots of whole local days, of a step that parts an hour; `runs` gives what ran. */
export function slotsOf(
  from: number,
  days: number,
  { step, zone = ZONE, runs }: { step: number; zone?: string; runs: (slot: number) => [number, number, number] },
): Slot[] {
  const clock = zoneClock(zone, from, from + days)
  const [begins, ends] = [clock.startOf(from), clock.startOf(from + days)]
  return Array.from({ length: (ends - begins) / step }, (_, i) => {
    const [heat, cool, fan] = runs(i)
    return { at: begins + i * step, heat, cool, fan }
  })
}

/** Hours by run over all slots, or those of one local month. */
export function truthOf(slots: readonly Slot[], month?: string, zone = ZONE): Record<Run, number> {
  const day = (at: number) => zoneClock(zone, Math.floor(at / 86_400) - 2, Math.floor(at / 86_400) + 2).dayOf(at)
  const of = month ? slots.filter(({ at }) => dayText(day(at)).startsWith(month)) : slots
  return Object.fromEntries(RUNS.map((run) => [run, of.reduce((sum, slot) => sum + slot[run], 0) / 3600])) as Record<
    Run,
    number
  >
}

const formats = new Map<string, Intl.DateTimeFormat>()

/** The wall clock of a zone as its parts. */
export function wall(
  at: number,
  zone: string,
): { year: string; month: string; day: string; hour: number; minute: string } {
  let format = formats.get(zone)
  if (!format) {
    format = new Intl.DateTimeFormat('en-US', {
      ...{ timeZone: zone, hourCycle: 'h23', year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit' },
      minute: '2-digit',
    })
    formats.set(zone, format)
  }
  const parts = format.formatToParts(at * 1000)
  const part = (type: string) => parts.find((one) => one.type === type)?.value ?? ''
  return {
    year: part('year'),
    month: part('month'),
    day: part('day'),
    hour: Number(part('hour')),
    minute: part('minute'),
  }
}

/** The bytes of a file as a stream hands them over. */
export async function* inPieces(bytes: Uint8Array, size = 64 * 1024): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size)
}

/** Reads an export as a person would who corrects nothing, or by the choices given. */
export async function understood(
  bytes: Uint8Array | string,
  choices: Record<string, string> = {},
  { today = '2026-11-25', homeZone = ZONE }: { today?: string; homeZone?: string } = {},
): Promise<Understood> {
  const file = typeof bytes === 'string' ? new TextEncoder().encode(bytes) : bytes
  const head = readHead(file.subarray(0, HEAD_BYTES))
  if (!head.ok) throw new Error(head.say)
  return understandExport(inPieces(file), head.value, {
    choices: parseChoices(new Map(Object.entries(choices))),
    homeZone,
    today,
    fanRule: { heatBlower: 1.07, coolBlows: true },
  })
}

/** What was understood, summed over its pieces. */
export function totalOf({ pieces }: Understood): Record<Run, number> {
  const sum = (key: 'heatHours' | 'coolHours' | 'fanHours') => pieces.reduce((all, piece) => all + (piece[key] ?? 0), 0)
  return { heat: sum('heatHours'), cool: sum('coolHours'), fan: sum('fanHours') }
}
