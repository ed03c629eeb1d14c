'use server'

import { tables } from '@/content/tables'
import { action } from '@/lib/access/action'
import { type BillDays, baseUseADay, daysOf, isSummerLarger } from '@/lib/core/base-use'
import type { Day } from '@/lib/core/day'
import { dateInWords } from '@/lib/core/day-words'
import type { Household, Reading } from '@/lib/core/household'
import { billHeatHours } from '@/lib/core/measured'
import { modelledHours } from '@/lib/core/modelled-hours'
import { hoursInWords, roughly } from '@/lib/core/unit-words'
import { type BillsRead, billReadings, billUnitInWords, readBills } from '@/lib/forms/bill-form'
import { type Read, type Typed, typedOf } from '@/lib/forms/describe/answers'
import { runTyped, type TypedReadings } from '../run-typed'
import type { TypedAnswer } from '../typed-answer'

/** Shows what bills come to, with what of them is not for heating, and saves them when that was seen. */
export const keepBills = action<Typed, TypedAnswer>({
  name: 'measured-keep-bills',
  needs: 'manage',
  parse: (form) => ({ ok: true, value: typedOf(form) }),
  run: (asked) => runTyped(asked, billsTyped),
})

function billsTyped(typed: Typed, home: Household, on: Day): Read<TypedReadings> {
  const read = readBills(typed, home, on)
  if (!read.ok) return read
  const { coolingCounts, bills } = read.value
  const known = knownBills(home, read.value, on)
  if (isSummerLarger(known, { coolingCounts })) return { ok: false, faults: [SUMMER_LARGER] }
  const baseADay = baseUseADay(known, { coolingCounts })
  const bases = new Map(
    bills.map(({ row, from, to, amount, base }) => [
      row,
      base ?? Math.min(amount, Math.round((baseADay ?? 0) * daysOf({ from, to }) * 10) / 10),
    ]),
  )
  const fresh = billReadings(read.value, (row) => bases.get(row) ?? 0)
  const filled = Object.fromEntries([...bases].map(([row, base]) => [`base-${row}`, [String(base)]]))
  return {
    ok: true,
    value: {
      fresh,
      typed: { ...typed, ...filled },
      lines: linesOf(home, read.value, { bases, fresh, on }),
      notes: [baseInWords(read.value, baseADay)],
    },
  }
}

const SUMMER_LARGER = {
  path: '',
  say: 'The bills without heating are larger, by the day, than those of winter. Then they are not of this heating alone: look at the days and the unit, and whether the meter counts something else, such as a pool or a neighbour.',
}

/** The bills that were typed, and those that stand already, in the unit that was typed. */
function knownBills(home: Household, { system, bills, thermsEach }: BillsRead, on: Day): BillDays[] {
  const standing = home.readings.flatMap((reading) =>
    reading.source === 'bill' && reading.system === system.id
      ? [{ from: reading.from, to: reading.to, amount: reading.therms / thermsEach }]
      : [],
  )
  const others = standing.filter(({ from, to }) => !bills.some((bill) => bill.from <= to && from <= bill.to))
  return [...bills, ...others].map(({ from, to, amount }) => {
    const { heat, cool } = modelledHours(home, system.id, { from, to }, { tables, on })
    return { from, to, amount, modelHeatHours: heat, modelCoolHours: cool }
  })
}

function linesOf(
  home: Household,
  { system, bills, unit }: BillsRead,
  { bases, fresh, on }: { bases: Map<number, number>; fresh: Reading[]; on: Day },
): string[] {
  return bills.map(({ row, from, to, amount }, i) => {
    const reading = fresh[i]
    const hours =
      reading?.source === 'bill' && system.heat
        ? billHeatHours(reading, system.heat, home.elevationFt ?? 0, tables.figures)
        : 0
    const { heat } = modelledHours(home, system.id, { from, to }, { tables, on })
    return `${dateInWords(from)} to ${dateInWords(to)}: ${roughly(amount)} ${billUnitInWords(unit)}, ${roughly(bases.get(row) ?? 0)} of them not for heating: ${hoursInWords(hours)} of heating; the estimate was ${hoursInWords(heat)}.`
  })
}

function baseInWords({ unit, coolingCounts, bills }: BillsRead, baseADay: number | null): string {
  if (bills.every(({ base }) => base !== undefined)) return 'What is not for heating is as you wrote it.'
  const idle = coolingCounts ? 'neither heating nor cooling runs' : 'no heating runs'
  if (baseADay === null)
    return `None of the bills lies in a time when ${idle}, so everything was counted as heating. If hot water or cooking run on it too, add a bill from such a time, or write what is not for heating.`
  return `What is not for heating: ${roughly(baseADay)} ${billUnitInWords(unit)} a day, the middle of the bills from the time when ${idle}, for as many days as each bill has. Change it where you know better.`
}
