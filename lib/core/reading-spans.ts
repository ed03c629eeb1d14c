import { compareDays, type Day, dayNumber, dayText } from './day'
import type { Reading } from './household'

export const QUANTITIES = ['heatHours', 'coolHours', 'fanHours'] as const
export type Quantity = (typeof QUANTITIES)[number]

/** A reading that stands, with our id of it. */
export interface StandingReading {
  id: string
  reading: Reading
}

/** What bringing readings does to those that stand. */
export interface Replacement {
  /** Taken out: what they measured is measured anew, or what is left of them stands in `rest`. */
  gone: StandingReading[]
  /** What is left of readings that reach further, or measured more, than what replaces them. */
  rest: Reading[]
  /** Readings of another source that measure the same on the same days: one of the two must go first. */
  contradicting: { fresh: Reading; standing: Reading }[]
}

/** Days on which readings that stand give way to others of their system and source, and in what. */
export interface Cover {
  from: Day
  to: Day
  quantities: readonly Quantity[]
}

/** What a reading measures. A bill stands for heating hours. */
export function quantitiesOf(reading: Reading): Quantity[] {
  if (reading.source === 'bill') return ['heatHours']
  return QUANTITIES.filter((quantity) => reading[quantity] !== undefined)
}

function meets(a: { from: Day; to: Day }, b: { from: Day; to: Day }): boolean {
  return a.from <= b.to && b.from <= a.to
}

/** From the first to the last day of some readings, of which there is at least one. */
export function spanOf(readings: readonly { from: Day; to: Day }[]): { from: Day; to: Day } {
  const [from, to] = [
    readings.map((one) => one.from).sort(compareDays)[0],
    readings
      .map((one) => one.to)
      .sort(compareDays)
      .at(-1),
  ]
  if (from === undefined || to === undefined) throw new RangeError('no readings')
  return { from, to }
}

/** A report tells all of its days: where it has no hours between the first and the last, nothing ran. */
export function coverOfReport(readings: readonly Reading[]): Cover {
  return { ...spanOf(readings), quantities: QUANTITIES }
}

/**
 * What becomes of the readings that stand when others of one system and source are brought: those of the same source
 * give way where the others cover them, each its own days and quantities unless told; others must not measure the same.
 */
export function replaceReadings(
  standing: readonly StandingReading[],
  fresh: readonly Reading[],
  covers: readonly Cover[] = fresh.map((one) => ({ from: one.from, to: one.to, quantities: quantitiesOf(one) })),
): Replacement {
  const first = fresh[0]
  const replacement: Replacement = { gone: [], rest: [], contradicting: [] }
  if (!first) return replacement
  for (const one of standing) {
    const { reading } = one
    if (reading.system !== first.system) continue
    if (reading.source === first.source) {
      const left = covers.reduce((parts, cover) => parts.flatMap((part) => uncovered(part, cover)), [reading])
      if (left[0] === reading) continue
      replacement.gone.push(one)
      replacement.rest.push(...left)
      continue
    }
    const other = fresh.find(
      (brought) =>
        meets(brought, reading) && quantitiesOf(brought).some((quantity) => quantitiesOf(reading).includes(quantity)),
    )
    if (other) replacement.contradicting.push({ fresh: other, standing: reading })
  }
  return replacement
}

function uncovered(reading: Reading, cover: Cover): Reading[] {
  const gives = meets(reading, cover) && quantitiesOf(reading).some((quantity) => cover.quantities.includes(quantity))
  return gives ? withoutSpan(reading, cover, cover.quantities) : [reading]
}

/**
 * A reading without some quantities on some days: what it measured of others stays whole, and of these the days before
 * and after the span keep their share by number of days, for how its hours lay inside it nobody knows.
 */
export function withoutSpan(
  reading: Reading,
  span: { from: Day; to: Day },
  quantities: readonly Quantity[],
): Reading[] {
  const [from, to] = [dayNumber(reading.from), dayNumber(reading.to)]
  const parts = [
    { from, to: Math.min(to, dayNumber(span.from) - 1) },
    { from: Math.max(from, dayNumber(span.to) + 1), to },
  ].filter((part) => part.from <= part.to)
  const cut = (part: { from: number; to: number }) => {
    const share = (part.to - part.from + 1) / (to - from + 1)
    return {
      from: dayText(part.from),
      to: dayText(part.to),
      of: (amount: number) => Math.round(amount * share * 100) / 100,
    }
  }
  if (reading.source === 'bill')
    return parts.map(cut).map(({ from: begins, to: ends, of }) => ({
      ...reading,
      ...{ from: begins, to: ends, therms: of(reading.therms), baseTherms: of(reading.baseTherms) },
    }))
  const has = (which: boolean) =>
    QUANTITIES.filter((quantity) => reading[quantity] !== undefined && quantities.includes(quantity) === which)
  const { system, source } = reading
  const kept = has(false)
  const rest: Reading[] = parts.map(cut).map(({ from: begins, to: ends, of }) => ({
    ...{ system, from: begins, to: ends, source },
    ...Object.fromEntries(has(true).map((quantity) => [quantity, of(reading[quantity] ?? 0)])),
  }))
  if (kept.length > 0)
    rest.push({
      ...{ system, from: reading.from, to: reading.to, source },
      ...Object.fromEntries(kept.map((quantity) => [quantity, reading[quantity]])),
    })
  return rest
}

/** The first two readings that measure the same of one system on the same day; null where none do. */
export function clashingReadings(readings: readonly Reading[]): [Reading, Reading] | null {
  // In the order of their first days, the last one without a clash is the one that reaches furthest.
  const last = new Map<string, Reading>()
  for (const reading of readings.toSorted((a, b) => compareDays(a.from, b.from)))
    for (const quantity of quantitiesOf(reading)) {
      const key = JSON.stringify([reading.system, quantity])
      const before = last.get(key)
      if (before && reading.from <= before.to) return [before, reading]
      last.set(key, reading)
    }
  return null
}
