import type { Day } from '@/lib/core/day'
import type { Fault } from '@/lib/core/fault'
import type { Household } from '@/lib/core/household'
import { faultsOf, withoutFaults } from './fault'
import { fileSchema } from './household-schema'
import { readJson } from './read-json'
import { FILE_LIMIT_BYTES, readText } from './read-text'
import { householdRules } from './rules/household-rules'

export { FILE_LIMIT_BYTES } from './read-text'

export type HouseholdFile = { ok: true; households: Household[] } | { ok: false; faults: Fault[] }

/**
 * A household file (`plenum: 1`) as domain values, or everything that is wrong with it at once, each fault with its
 * path in the file. `on` is today, or says what today is in a time zone: records and readings are never later.
 * `larger` says what to do with a file over the limit.
 */
export function parseHouseholdFile(
  input: string | Uint8Array,
  on: Day | ((timeZone: string) => Day),
  { limitBytes = FILE_LIMIT_BYTES, larger }: { limitBytes?: number; larger?: string } = {},
): HouseholdFile {
  const read = readText(input, { limitBytes, larger })
  if (!read.ok) return { ok: false, faults: [read.fault] }
  const json = readJson(read.text)
  if (!json.ok) return json

  const most = Math.ceil(limitBytes / LEAST_BYTES_AN_ENTRY)
  if (entriesIn(json.value) > most)
    return { ok: false, faults: [{ path: '', say: `holds more than ${most} entries${larger ? `: ${larger}` : ''}` }] }
  const parsed = checked(json.value)
  if (parsed === null) return { ok: false, faults: [{ path: '', say: 'has more faults than can be listed at once' }] }
  const issues = parsed.success ? [] : parsed.error.issues
  const rest = parsed.success ? parsed.data : withoutFaults<{ households: Household[] }>(json.value, issues)
  const today = typeof on === 'function' ? on : () => on
  const faults = [...faultsOf(issues), ...householdRules(rest?.households ?? [], today)]
  return parsed.success && faults.length === 0
    ? { ok: true, households: parsed.data.households }
    : { ok: false, faults }
}

// In earnest: records are some seventy signs each.
const LEAST_BYTES_AN_ENTRY = 45

/** How many values stand in lists, at any depth: each is looked at, and a million of them would take a minute. */
function entriesIn(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 0
  let count = Array.isArray(value) ? value.length : 0
  for (const part of Object.values(value)) count += entriesIn(part)
  return count
}

// zod hands the faults of a list on as arguments, and of those there is an end: some hundred thousand.
function checked(value: unknown): ReturnType<typeof fileSchema.safeParse> | null {
  try {
    return fileSchema.safeParse(value)
  } catch (error) {
    if (error instanceof RangeError) return null
    throw error
  }
}

// The order of doors.md. One order serves every group of keys: where two groups share keys they agree on it.
const KEY_ORDER =
  `plenum households on id name building tenure since timeZone units elevationFt emergencyNumber climate kind hdd65 cdd65
  heatingDesignF coolingDesignF people pets petFactor smoking carpet hardWater vulnerable dustEvents weather systems
  filters devices records readings system delivery from to highF lowF heat cool source inputBtuh outputBtuh efficiency
  riseF tons installed fan mode minutesPerHour thermostat heatSetpointF coolSetpointF airflowCfm dustStart median spread
  place nominal widthIn heightIn depthIn made
  endOfLife filter light fitted medium merv labelLimitDays task subject by heatHours coolHours fanHours therms
  baseTherms`.split(/\s+/)

const LISTS = ['dustEvents', 'systems', 'filters', 'devices', 'records', 'readings'] as const

/** Households as a file that `parseHouseholdFile` reads back to the same values; empty lists are left out. */
export function writeHouseholdFile(households: readonly Household[]): string {
  const written = households.map((household) => {
    const copy: Partial<Household> = { ...household }
    for (const key of LISTS) if (household[key].length === 0) delete copy[key]
    if (household.weather?.length === 0) delete copy.weather
    return copy
  })
  return `${JSON.stringify({ plenum: 1, households: written }, KEY_ORDER, 2)}\n`
}
