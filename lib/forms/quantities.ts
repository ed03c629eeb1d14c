import { z } from 'zod'
import { type Day, isDay } from '@/lib/core/day'
import { JOULES_PER_BTU } from '@/lib/core/unit-words'
import { shown } from './fields'
import { typedNumber } from './lengths'

export { inchesFrom, typedNumber } from './lengths'

/** 1 therm = 100 000 Btu. */
export const BTU_PER_THERM = 100_000

// By definition (NIST Special Publication 811, appendix B).
const LITRES_PER_GALLON = 3.785411784
const FT3_PER_M3 = 35.3147

/**
 * Btu in one unit as a bill names it. US Energy Information Administration, units and calculators [G]; therm, gigajoule
 * and litre by definition.
 */
const BTU_PER_UNIT = {
  therm: BTU_PER_THERM,
  // Natural gas, 1036 Btu a cubic foot.
  ft3: 1036,
  ccf: 103_600,
  m3: 1036 * FT3_PER_M3,
  gj: 1e9 / JOULES_PER_BTU,
  'oil-gallon': 137_381,
  'oil-litre': 137_381 / LITRES_PER_GALLON,
  'propane-gallon': 91_333,
  'propane-litre': 91_333 / LITRES_PER_GALLON,
  kwh: 3412,
} as const

export type BillUnit = keyof typeof BTU_PER_UNIT
export const BILL_UNITS = Object.keys(BTU_PER_UNIT) as [BillUnit, ...BillUnit[]]

/** Btu in a cubic foot of gas where the bill does not say: the average of the United States, as above [G]. */
export const USUAL_BTU_PER_FT3 = 1036

/** What a bill counts, as therms: `thermsFrom(100, 'ccf')` is 103.6. Gas by volume holds as much heat as its supplier says. */
export function thermsFrom(amount: number, unit: BillUnit, btuPerFt3 = USUAL_BTU_PER_FT3): number {
  const isVolume = unit === 'ft3' || unit === 'ccf' || unit === 'm3'
  return (amount * BTU_PER_UNIT[unit] * (isVolume ? btuPerFt3 / USUAL_BTU_PER_FT3 : 1)) / BTU_PER_THERM
}

/** The heat in a cubic metre of gas, in MJ, as Btu in a cubic foot: `btuPerFt3From(38.6)` is about 1036. */
export function btuPerFt3From(mjPerM3: number): number {
  return (mjPerM3 * 1e6) / JOULES_PER_BTU / FT3_PER_M3
}

/** `fahrenheitFrom(21)` is 69.8. */
export function fahrenheitFrom(celsius: number): number {
  return (celsius * 9) / 5 + 32
}

/** `celsiusFrom(70)` is 21.1…. */
export function celsiusFrom(fahrenheit: number): number {
  return ((fahrenheit - 32) * 5) / 9
}

/** A form field that holds a number between two limits, both included. Empty, wrong and too large each say so. */
export function typedQuantity({ min, max, unit, whole }: { min: number; max: number; unit: string; whole?: boolean }) {
  const must = `Write ${whole ? 'a whole number' : 'a number'} between ${min} and ${max} (${unit})`
  return z.string({ error: `${must}.` }).transform((typed, context) => {
    const value = typedNumber(typed)
    if (value !== undefined && value >= min && value <= max && (!whole || Number.isInteger(value))) return value
    const but = typed.trim() === '' ? '.' : value === undefined ? `; ${shown(typed)} is no number.` : `, not ${value}.`
    context.addIssue({ code: 'custom', message: `${must}${but}` })
    return z.NEVER
  })
}

// By definition of the joule and the Btu, as above.
const BTUH_PER_KW = 3_600_000 / JOULES_PER_BTU

/**
 * A form field for what a unit gives or takes, in `unit`, one of which is so many Btu/h; or in kilowatts, where what is
 * typed says so: `23 kW`. The answer is in `unit`, to `decimals`.
 */
export function typedPower(
  { min, max, unit }: { min: number; max: number; unit: string },
  { btuh, decimals }: { btuh: number; decimals: number },
) {
  const each = BTUH_PER_KW / btuh
  const plain = typedQuantity({ min, max, unit })
  const kilowatts = typedQuantity({ min: Math.ceil((min / each) * 10) / 10, max: Math.floor(max / each), unit: 'kW' })
  return z.string().transform((typed, context) => {
    const text = typed.trim()
    const inKilowatts = /kw$/i.test(text)
    const read = inKilowatts ? kilowatts.safeParse(text.slice(0, -2).trim()) : plain.safeParse(typed)
    if (read.success) return inKilowatts ? Number((read.data * each).toFixed(decimals)) : read.data
    for (const { message } of read.error.issues) context.addIssue({ code: 'custom', message })
    return z.NEVER
  })
}

/** A form field in °C or °F, as °F between two limits in °F; the message speaks in the unit that was typed. */
export function typedTemperature({ minF, maxF, unit }: { minF: number; maxF: number; unit: 'F' | 'C' }) {
  if (unit === 'F') return typedQuantity({ min: minF, max: maxF, unit: '°F' })
  // Whole degrees inside the limits, so that what the message allows is never refused.
  const limits = { min: Math.ceil(celsiusFrom(minF)), max: Math.floor(celsiusFrom(maxF)) }
  return typedQuantity({ ...limits, unit: '°C' }).transform(fahrenheitFrom)
}

/** A date field, which sends `2026-11-25`; whoever types may also write `2026-1-5` or `2026/01/05`. Month and day in another order could be either: refused. */
export const typedDay = z.string({ error: 'Choose a day.' }).transform((typed, context): Day => {
  const text = typed.trim()
  const yearFirst = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(text)
  const [, year, month, date] = yearFirst ?? []
  const day = `${year}-${month?.padStart(2, '0')}-${date?.padStart(2, '0')}`
  if (isDay(day)) return day
  context.addIssue({
    code: 'custom',
    message: text === '' ? 'Choose a day.' : `Write a day that exists, like 2026-11-25; ${shown(typed)} is none.`,
  })
  return z.NEVER
})

/** Nothing that is kept here was made, done or seen before it: who types an earlier day has slipped. */
export const FIRST_MEANT: Day = '1950-01-01'
export const NOT_MEANT = `Look at the year: days before ${FIRST_MEANT} are not kept here.`

/** A day that somebody can have meant of their home. Files may name any that doors take; this is for what is typed. */
export const typedMeantDay = typedDay.refine((day) => day >= FIRST_MEANT, {
  error: NOT_MEANT,
})

/** A day that is not after `today`, for what has been done. */
export function typedPastDay(today: Day) {
  return typedMeantDay.refine((day) => day <= today, {
    error: `Choose today or an earlier day: only what has happened can be recorded (today is ${today}).`,
  })
}
