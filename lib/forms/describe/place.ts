import type { AnnualClimate, Assumed, Household } from '@/lib/core/household'
import { TENURES } from '@/lib/core/household'
import { isTimeZone } from '../household-schema'
import { celsiusFrom, typedTemperature } from '../quantities'
import { Answers, type DescribeTables, known, one, type Read, type Station, type Typed } from './answers'

type PlaceTables = Pick<DescribeTables, 'stations' | 'zones'>

export type Place = Pick<
  Household,
  'name' | 'building' | 'tenure' | 'timeZone' | 'units' | 'elevationFt' | 'climate'
> & {
  assumed: Assumed[]
}

const MIXED_ZONE = 4
const FEET_PER_METRE = 1 / 0.3048

/** Name, tenure, time zone and climate. `before` is the home as it stands, whose monthly climate may be kept. */
export function readPlace(typed: Typed, tables: PlaceTables, before?: Household): Read<Place> {
  const answers = new Answers(typed)
  const name = answers.line('name', 200) || answers.fault('name', 'Give the home a name: the street, or “home”.')
  const building = answers.line('building', 200)
  const tenure = answers.choice('tenure', TENURES, 'Say whether you own it, rent it, or let it to others.')
  const units = answers.text('units') === 'metric' ? 'metric' : 'us'
  const read = readClimate(answers, tables, { units, before })
  const timeZone = readTimeZone(answers, read?.station)
  const most = units === 'us' ? { min: -300, max: 12_000, unit: 'feet' } : { min: -90, max: 3650, unit: 'metres' }
  const height = answers.quantity('elevation', most)
  const elevationFt = height === undefined || units === 'us' ? height : Math.round(height * FEET_PER_METRE)
  return answers.result(() => ({
    name: known(name),
    ...(building && { building }),
    tenure: known(tenure),
    timeZone: known(timeZone),
    units,
    // A few hundred feet change nothing that is reckoned from it.
    ...pick('elevationFt', elevationFt ?? read?.station?.elevationFt),
    climate: known(read).climate,
    assumed: known(read).isAssumed ? [{ code: 'climate', subject: '' }] : [],
  }))
}

function pick<K extends string, V>(key: K, value: V | undefined): { [P in K]?: V } {
  return value === undefined ? {} : ({ [key]: value } as { [P in K]?: V })
}

interface ReadClimate {
  climate: Household['climate']
  station?: Station | undefined
  isAssumed: boolean
}

function readClimate(
  answers: Answers,
  { stations, zones }: PlaceTables,
  { units, before }: { units: Household['units']; before: Household | undefined },
): ReadClimate | undefined {
  const way = answers.text('way') || (answers.text('station') ? 'station' : '')
  if (way === 'keep' && before) return { climate: before.climate, isAssumed: isAssumed(before) }
  if (way === 'station') {
    const station = stations.find(({ id }) => id === answers.text('station'))
    if (!station)
      return answers.fault(
        'station',
        'Choose the place whose weather is most like yours, or describe the winters instead.',
      )
    return { climate: annual(station), station, isAssumed: false }
  }
  if (way === 'zone') {
    const text = answers.text('zone')
    const zone = zones.find((row) => String(row.zone) === (text === 'unknown' ? String(MIXED_ZONE) : text))
    if (!zone) return answers.fault('zone', 'Choose the line that is most like your weather, or “I don’t know”.')
    return { climate: annual(zone), isAssumed: text === 'unknown' }
  }
  if (way === 'numbers') {
    const climate = typedClimate(answers, units)
    return climate && { climate, isAssumed: false }
  }
  return answers.fault('way', 'Say how you want to tell the climate.')
}

function typedClimate(answers: Answers, units: Household['units']): AnnualClimate | undefined {
  const unit = units === 'us' ? 'F' : 'C'
  // °C·day are 1.8 °F·day.
  const scale = units === 'us' ? 1 : 1.8
  const days = (field: string, most: number, what: string) => {
    if (answers.text(field) === '')
      return answers.fault(field, `Write the ${what} degree-days, or choose another way to tell the climate.`)
    const value = answers.quantity(field, {
      min: 0,
      max: Math.floor(most / scale),
      unit: `${what} degree-days, °${unit}`,
    })
    return value === undefined ? undefined : Math.round(value * scale)
  }
  const hdd65 = days('hdd', 20_000, 'heating')
  const cdd65 = days('cdd', 8000, 'cooling')
  const heatingDesignF = answers.maybe('coldest', typedTemperature({ minF: -60, maxF: 65, unit }))
  const coolingDesignF = answers.maybe('hottest', typedTemperature({ minF: 65, maxF: 125, unit }))
  if (hdd65 === undefined || cdd65 === undefined) return undefined
  return {
    kind: 'annual',
    hdd65,
    cdd65,
    heatingDesignF: heatingDesignF ?? usualColdest(hdd65),
    coolingDesignF: coolingDesignF ?? usualHottest(cdd65),
  }
}

/** A design temperature that goes with so many heating degree-days: a line through the zones' starting values [P]. */
function usualColdest(hdd65: number): number {
  return Math.round(Math.max(-60, Math.min(65, 58 - hdd65 / 115)))
}

function usualHottest(cdd65: number): number {
  return Math.round(Math.max(76, Math.min(108, 84 + cdd65 / 240)))
}

function annual({ hdd65, cdd65, heatingDesignF, coolingDesignF }: Omit<AnnualClimate, 'kind'>): AnnualClimate {
  return { kind: 'annual', hdd65, cdd65, heatingDesignF, coolingDesignF }
}

function readTimeZone(answers: Answers, station: Station | undefined): string | undefined {
  const other = answers.text('other-zone')
  const chosen = answers.text('time-zone')
  const zone = chosen === 'other' || (chosen === '' && other) ? other : chosen || station?.timeZone
  if (!zone) return answers.fault('time-zone', 'Choose the time zone: a day begins at its midnight.')
  if (isTimeZone(zone)) return zone
  return answers.fault('other-zone', 'Write the zone’s name as in America/Chicago or Europe/Berlin.')
}

function isAssumed(home: Household): boolean {
  return home.assumed?.some(({ code }) => code === 'climate') ?? false
}

/** The fields as the home fills them. */
export function placeTyped(home: Household, { stations, zones }: PlaceTables): Typed {
  const { climate, units } = home
  const same = (row: Omit<AnnualClimate, 'kind'>) =>
    climate.kind === 'annual' && Object.entries(annual(row)).every(([key, value]) => climate[key as 'hdd65'] === value)
  const station = stations.find(same)
  const zone = zones.find(same)
  const way = climate.kind === 'monthly' ? 'keep' : station ? 'station' : zone ? 'zone' : 'numbers'
  const scale = units === 'us' ? 1 : 1.8
  const degrees = (f: number) => (units === 'us' ? f : Math.round(celsiusFrom(f) * 10) / 10)
  const numbers: Typed =
    climate.kind === 'annual'
      ? {
          hdd: one(Math.round(climate.hdd65 / scale)),
          cdd: one(Math.round(climate.cdd65 / scale)),
          coldest: one(degrees(climate.heatingDesignF)),
          hottest: one(degrees(climate.coolingDesignF)),
        }
      : {}
  const { elevationFt } = home
  return {
    name: [home.name],
    building: one(home.building),
    tenure: [home.tenure],
    units: [units],
    way: [way],
    station: one(station?.id),
    zone: isAssumed(home) ? ['unknown'] : one(zone?.zone),
    ...numbers,
    'time-zone': [home.timeZone],
    elevation: one(elevationFt === undefined || units === 'us' ? elevationFt : Math.round(elevationFt * 0.3048)),
  }
}
