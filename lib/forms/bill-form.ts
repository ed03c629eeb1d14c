import type { Day } from '@/lib/core/day'
import type { HeatSource, Household, Reading, System } from '@/lib/core/household'
import type { Units } from '@/lib/core/unit-words'
import { chosenSystem } from './chosen-system'
import { Answers, known, type Read, type Typed } from './describe/answers'
import {
  BILL_UNITS,
  type BillUnit,
  btuPerFt3From,
  thermsFrom,
  typedMeantDay,
  typedPastDay,
  typedQuantity,
  USUAL_BTU_PER_FT3,
} from './quantities'

export const MOST_BILLS = 40
const AMOUNT = { min: 0, max: 1_000_000, unit: 'as the bill counts' }
/** The heat in gas by volume, as its supplier says it, in Btu a cubic foot. */
const CONTENT = {
  us: typedQuantity({ min: 500, max: 1500, unit: 'Btu in a cubic foot' }),
  metric: typedQuantity({ min: 19, max: 55, unit: 'MJ in a cubic metre' }).transform(btuPerFt3From),
}

/** Bills as they were typed, in the unit that they count in. */
export interface BillsRead {
  system: System
  unit: BillUnit
  /** Therms in one of the unit. */
  thermsEach: number
  /** Cooling runs on the same meter, so that a summer bill does not tell what is used beside heating. */
  coolingCounts: boolean
  bills: { row: number; from: Day; to: Day; amount: number; base: number | undefined }[]
}

const GAS: readonly BillUnit[] = ['therm', 'ccf', 'ft3', 'm3', 'gj', 'kwh']
const OIL: readonly BillUnit[] = ['oil-gallon', 'oil-litre']
const PROPANE: readonly BillUnit[] = ['propane-gallon', 'propane-litre']
const METRIC: readonly BillUnit[] = ['m3', 'gj', 'kwh', 'oil-litre', 'propane-litre']

/** Those that bills of a home with such units count in come first. */
function usualFirst(may: readonly BillUnit[], units: Units): BillUnit[] {
  const isUsual = (unit: BillUnit) => units === 'us' || METRIC.includes(unit)
  return [...may.filter(isUsual), ...may.filter((unit) => !isUsual(unit))]
}

/** What each kind of heating may be billed in, or why its bill cannot be turned into hours. */
export function unitsFor(source: HeatSource, units: Units): { units: BillUnit[] } | { because: string } {
  if (source === 'heat-pump')
    return {
      because:
        'A heat pump takes more or less power with the weather, and its bill holds cooling and the whole house too: kilowatt-hours do not say how long it ran. Bring the thermostat’s report, or read an hour meter.',
    }
  if (source === 'dual-fuel')
    return {
      because:
        'A bill for fuel says how long the burner ran, and nothing of the heat pump beside it, which heats on most days. Bring the thermostat’s report, or read an hour meter.',
    }
  if (source.startsWith('electric')) return { units: ['kwh'] }
  if (source.startsWith('oil')) return { units: usualFirst(OIL, units) }
  if (source.startsWith('propane')) return { units: usualFirst(PROPANE, units) }
  return { units: usualFirst(source === 'wall-furnace' ? [...GAS, ...PROPANE] : GAS, units) }
}

const UNIT_WORDS: Record<BillUnit, string> = {
  therm: 'therms',
  ccf: 'hundred cubic feet (CCF)',
  ft3: 'cubic feet',
  m3: 'cubic metres',
  gj: 'gigajoules (GJ)',
  kwh: 'kilowatt-hours',
  'oil-gallon': 'gallons of heating oil',
  'oil-litre': 'litres of heating oil',
  'propane-gallon': 'gallons of propane',
  'propane-litre': 'litres of propane',
}

export function billUnitInWords(unit: BillUnit): string {
  return UNIT_WORDS[unit]
}

/** Bills, a row each: `from-0`, `to-0`, `amount-0`, `base-0`. All faults at once. */
export function readBills(
  typed: Typed,
  { systems, units }: Pick<Household, 'systems' | 'units'>,
  on: Day,
): Read<BillsRead> {
  const answers = new Answers(typed)
  const system = chosenSystem(answers, systems, 'Choose the system that the bills are for.')
  const unit = answers.choice('unit', BILL_UNITS, 'Choose the unit that the bills count in.')
  const content = answers.maybe('content', CONTENT[units]) ?? USUAL_BTU_PER_FT3
  if (system) systemFaults(answers, system, { unit, units })
  const bills: BillsRead['bills'] = []
  for (let row = 0; row < MOST_BILLS; row++) {
    if (['from', 'to', 'amount', 'base'].every((field) => answers.text(`${field}-${row}`) === '')) continue
    const from = answers.take(`from-${row}`, typedMeantDay)
    const to = answers.take(`to-${row}`, typedPastDay(on))
    const amount = answers.take(`amount-${row}`, typedQuantity(AMOUNT))
    const base = answers.maybe(`base-${row}`, typedQuantity(AMOUNT))
    if (from && to && to < from) answers.fault(`to-${row}`, `It cannot end before it begins (${from}).`)
    else if (base !== undefined && amount !== undefined && base > amount)
      answers.fault(`base-${row}`, `More than the whole bill (${amount}) cannot be for something else.`)
    else if (from && to && amount !== undefined) bills.push({ row, from, to, amount, base })
  }
  for (const [i, bill] of bills.entries()) {
    const other = bills.slice(0, i).find(({ from, to }) => from <= bill.to && bill.from <= to)
    if (other)
      answers.fault(
        `from-${bill.row}`,
        `${bill.from} to ${bill.to} and ${other.from} to ${other.to} share days: a bill begins the day after the last one ended.`,
      )
  }
  if (bills.length === 0 && answers.faults.length === 0) answers.fault('from-0', 'Write one bill at least.')
  return answers.result(() => ({
    system: known(system),
    unit: known(unit),
    thermsEach: thermsFrom(1, known(unit), content),
    coolingCounts: known(unit) === 'kwh' && (known(system).heat?.source ?? '').startsWith('electric'),
    bills: bills.sort((a, b) => (a.from < b.from ? -1 : 1)),
  }))
}

function systemFaults(
  answers: Answers,
  system: System,
  { unit, units }: { unit: BillUnit | undefined; units: Units },
): void {
  if (!system.heat) {
    answers.fault('system', `${system.name} does not heat: a bill says nothing of it.`)
    return
  }
  const may = unitsFor(system.heat.source, units)
  if ('because' in may) {
    answers.fault('system', may.because)
    return
  }
  if (unit && !may.units.includes(unit))
    answers.fault(
      'unit',
      `${system.name} is not heated by what is sold in ${UNIT_WORDS[unit]}. It may be billed in ${may.units.map((one) => UNIT_WORDS[one]).join(', ')}.`,
    )
  if (system.heat.inputBtuh === undefined)
    answers.fault(
      'system',
      `A bill needs the input rating of ${system.name}: enter it from the rating plate first, under Details.`,
    )
}

/** The bills as readings; `baseOf` gives what of each was not for heating, in the bill's unit. */
export function billReadings({ system, bills, thermsEach }: BillsRead, baseOf: (row: number) => number): Reading[] {
  const round = (therms: number) => Math.round(therms * 1000) / 1000
  return bills.map(({ row, from, to, amount }) => ({
    ...{ system: system.id, from, to, source: 'bill' },
    ...{ therms: round(amount * thermsEach), baseTherms: round(Math.min(amount, baseOf(row)) * thermsEach) },
  }))
}
