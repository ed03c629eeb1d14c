import type {
  Device,
  DustEvent,
  Filter,
  Household,
  LogRecord,
  Reading,
  System,
  WeatherSpell,
} from '@/lib/core/household'
import type * as Rows from '@/prisma/generated/sqlite/client'
import { given } from './record-rows'

// The rows were written from households that lib/forms had parsed, so that their words are the known ones: the casts
// here say no more than that.

/** The lists of one household, in their order. */
export interface Lists {
  dustEvents: DustEvent[]
  weather: WeatherSpell[]
  systems: System[]
  filters: Filter[]
  devices: Device[]
  records: LogRecord[]
  readings: Reading[]
}

/** The household that a row and its lists state; optional keys that the file left out are absent. */
export function householdValue(row: Rows.Household, { weather, ...lists }: Lists): Household {
  return {
    id: row.fileId,
    name: row.name,
    ...given('building', row.building),
    tenure: row.tenure,
    ...given('since', row.since),
    timeZone: row.timeZone,
    units: row.units,
    ...given('elevationFt', row.elevationFt),
    ...given('emergencyNumber', row.emergencyNumber),
    climate: {
      kind: row.climateKind,
      hdd65: JSON.parse(row.climateHdd65),
      cdd65: JSON.parse(row.climateCdd65),
      heatingDesignF: row.heatingDesignF,
      coolingDesignF: row.coolingDesignF,
    },
    people: row.people,
    pets: row.pets,
    ...given('petFactor', row.petFactor),
    smoking: row.smoking,
    carpet: row.carpet,
    hardWater: row.hardWater,
    vulnerable: row.vulnerable,
    ...(row.assumed && { assumed: JSON.parse(row.assumed) }),
    ...lists,
    ...(weather.length > 0 && { weather }),
    ...whatStillPoints(lists),
  } as Household
}

// What was recorded about something that is gone stays in the log, and out of the plan and the file.
function whatStillPoints({
  systems,
  filters,
  devices,
  records,
  readings,
}: Omit<Lists, 'weather'>): Pick<Lists, 'records' | 'readings'> {
  const systemIds = new Set(systems.map(({ id }) => id))
  const filterIds = new Set(filters.map(({ id }) => id))
  const subjects = new Set([...systemIds, ...filterIds, ...devices.map(({ id }) => id)])
  return {
    records: records.filter((record) =>
      record.kind === 'service-done' ? subjects.has(record.subject) : filterIds.has(record.filter),
    ),
    readings: readings.filter(({ system }) => systemIds.has(system)),
  }
}

export function dustEventValue({ kind, from, to }: Rows.DustEvent): DustEvent {
  return { kind, from, to } as DustEvent
}

export function weatherSpellValue({ kind, from, to, highF, lowF }: Rows.WeatherSpell): WeatherSpell {
  return { kind, from, to, highF, lowF } as WeatherSpell
}

export function systemValue(row: Rows.System): System {
  const heat =
    row.heatSource === null
      ? null
      : {
          source: row.heatSource,
          ...given('inputBtuh', row.heatInputBtuh),
          ...given('outputBtuh', row.heatOutputBtuh),
          ...given('efficiency', row.heatEfficiency),
          ...given('riseF', row.heatRiseF),
          ...given('installed', row.heatInstalled),
        }
  const cool =
    row.coolSource === null
      ? null
      : {
          source: row.coolSource,
          ...given('tons', row.coolTons),
          ...given('installed', row.coolInstalled),
        }
  const fan = row.fanMode === null ? null : { mode: row.fanMode, ...given('minutesPerHour', row.fanMinutesPerHour) }
  const thermostat =
    row.heatSetpointF === null ? null : { heatSetpointF: row.heatSetpointF, coolSetpointF: row.coolSetpointF }
  const airflowCfm = row.airflowStated
    ? { ...given('heat', row.airflowHeatCfm), ...given('cool', row.airflowCoolCfm) }
    : null
  const dustStart =
    row.dustMedian === null
      ? null
      : { median: row.dustMedian, spread: row.dustSpread as number, systems: row.dustSystems as number }
  return {
    id: row.id,
    name: row.name,
    delivery: row.delivery,
    ...given('heat', heat),
    ...given('cool', cool),
    ...given('fan', fan),
    ...given('thermostat', thermostat),
    ...given('airflowCfm', airflowCfm),
    ...given('dustStart', dustStart),
  } as System
}

export function filterValue(row: Rows.Filter): Filter {
  return {
    id: row.id,
    system: row.system,
    place: row.place,
    nominal: { widthIn: row.widthIn, heightIn: row.heightIn, depthIn: row.depthIn },
    medium: row.medium,
    ...given('merv', row.merv),
    ...given('labelLimitDays', row.labelLimitDays),
  } as Filter
}

export function deviceValue(row: Rows.Device): Device {
  return {
    id: row.id,
    kind: row.kind,
    ...given('system', row.system),
    ...given('made', row.made),
    ...given('endOfLife', row.endOfLife),
  } as Device
}

export function readingValue(row: Rows.Reading): Reading {
  const { system, from, to, source } = row
  if (source === 'bill') return { system, from, to, source, therms: row.therms, baseTherms: row.baseTherms } as Reading
  return {
    system,
    from,
    to,
    source,
    ...given('heatHours', row.heatHours),
    ...given('coolHours', row.coolHours),
    ...given('fanHours', row.fanHours),
  } as Reading
}
