import { type Day, daysBetween } from '@/lib/core/day'
import type { Reading, System } from '@/lib/core/household'
import type { Loose, Path } from '../fault'
import { BTU_PER_THERM } from '../quantities'
import { type Report, refer } from './household-rules'
import { notLater, type Setting, spanRule } from './record-rules'

const QUANTITIES = ['heatHours', 'coolHours', 'fanHours'] as const
type Quantity = (typeof QUANTITIES)[number]
const WORDS = { heatHours: 'heating', coolHours: 'cooling', fanHours: 'fan' } as const

interface Measured {
  index: number
  from: Day
  to: Day
}

/** Measured hours: of known systems, in the past, no more than the days have, and nothing measured twice. */
export function readingRules(readings: readonly (Loose<Reading> | undefined)[] | undefined, setting: Setting): void {
  const measured = new Map<string, Measured[]>()
  readings?.forEach((reading, index) => {
    if (!reading) return
    const path: Path = ['readings', index]
    const system = refer(setting.known.systems, reading.system, { path: [...path, 'system'], report: setting.report })
    notLater(reading.to, [...path, 'to'], setting)
    if (!spanRule(reading, path, setting.report) || !reading.from || !reading.to) return
    const span = { from: reading.from, to: reading.to }
    if (reading.source === 'bill') billRules({ reading, system, span }, path, setting.report)
    else hourRules({ reading, span }, path, setting.report)
    for (const quantity of quantitiesOf(reading)) {
      if (reading.system === undefined) continue
      const key = JSON.stringify([reading.system, quantity])
      const spans = measured.get(key)
      // A list made anew for each of a hundred thousand readings would take the server minutes.
      if (spans) spans.push({ index, ...span })
      else measured.set(key, [{ index, ...span }])
    }
  })
  for (const [key, spans] of measured) overlapRule(spans, (JSON.parse(key) as [string, Quantity])[1], setting.report)
}

function quantitiesOf(reading: Loose<Reading>): Quantity[] {
  return reading.source === 'bill' ? ['heatHours'] : QUANTITIES.filter((quantity) => reading[quantity] !== undefined)
}

function hoursIn({ from, to }: { from: Day; to: Day }): number {
  return 24 * (daysBetween(from, to) + 1)
}

function hourRules(
  { reading, span }: { reading: Loose<Reading>; span: { from: Day; to: Day } },
  path: Path,
  report: Report,
): void {
  if (reading.source && QUANTITIES.every((quantity) => !Object.hasOwn(reading, quantity))) {
    report(path, 'has no hours; write heatHours, coolHours or fanHours, whichever was measured')
  }
  for (const quantity of QUANTITIES) {
    const hours = reading[quantity]
    if (hours !== undefined && hours > hoursIn(span)) {
      report(
        [...path, quantity],
        `must be at most ${hoursIn(span)}, the hours from ${span.from} to ${span.to}, but is ${hours}`,
      )
    }
  }
}

function billRules(
  {
    reading,
    system,
    span,
  }: { reading: Loose<Reading>; system: Loose<System> | undefined; span: { from: Day; to: Day } },
  path: Path,
  report: Report,
): void {
  if (!system) return
  // A rating that stands there but could not be read has a fault of its own.
  const heat = system.heat
  const hasInput = heat ? Object.hasOwn(heat, 'inputBtuh') : Object.hasOwn(system, 'heat')
  if (!hasInput) {
    report(
      path,
      `is a bill, but the system ${JSON.stringify(reading.system)} has no heat.inputBtuh; copy the input in Btu/h from its rating plate, or take the bill out`,
    )
  }
  if (heat?.inputBtuh === undefined || reading.therms === undefined || reading.baseTherms === undefined) return
  const hours = ((reading.therms - reading.baseTherms) * BTU_PER_THERM) / heat.inputBtuh
  if (hours > hoursIn(span)) {
    report(
      [...path, 'therms'],
      `would mean ${Math.round(hours)} hours of heating at ${heat.inputBtuh} Btu/h, but ${span.from} to ${span.to} has ${hoursIn(span)}; check the bill's unit and the rating`,
    )
  }
}

/** By first day: each reading against the one before it that reaches furthest. */
function overlapRule(spans: Measured[], quantity: Quantity, report: Report): void {
  const inOrder = spans.toSorted((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : a.index - b.index))
  let furthest: Measured | undefined
  for (const span of inOrder) {
    if (furthest && span.from <= furthest.to) {
      const [first, second] = furthest.index < span.index ? [furthest, span] : [span, furthest]
      report(
        ['readings', second.index],
        `measures the ${WORDS[quantity]} hours from ${second.from} to ${second.to}, and readings[${first.index}] those of the same system from ${first.from} to ${first.to}; no day may be measured twice, so shorten one or take it out`,
      )
    }
    if (!furthest || span.to > furthest.to) furthest = span
  }
}
