import type { Device, DustEvent, Filter, Household, Reading, System, WeatherSpell } from '@/lib/core/household'
import type { Row } from './insert'

/** The columns of `Household` that the household file fills. */
export function householdRow(household: Household): Row {
  const { climate } = household
  return {
    name: household.name,
    building: household.building ?? null,
    tenure: household.tenure,
    since: household.since ?? null,
    timeZone: household.timeZone,
    units: household.units,
    elevationFt: household.elevationFt ?? null,
    emergencyNumber: household.emergencyNumber ?? null,
    climateKind: climate.kind,
    climateHdd65: JSON.stringify(climate.hdd65),
    climateCdd65: JSON.stringify(climate.cdd65),
    heatingDesignF: climate.heatingDesignF,
    coolingDesignF: climate.coolingDesignF,
    people: household.people,
    pets: household.pets,
    petFactor: household.petFactor ?? null,
    smoking: household.smoking,
    carpet: household.carpet,
    hardWater: household.hardWater,
    vulnerable: household.vulnerable,
    assumed: household.assumed?.length ? JSON.stringify(household.assumed) : null,
  }
}

/** The lists that describe a home, as rows by table. Records and readings are written apart: people add to them. */
export function describedRows(householdId: string, household: Household): Record<DescribedTable, Row[]> {
  function numbered<T>(list: T[], row: (item: T) => Row): Row[] {
    return list.map((item, position) => ({ householdId, position, ...row(item) }))
  }
  return {
    DustEvent: numbered(household.dustEvents, dustEventRow),
    WeatherSpell: numbered(household.weather ?? [], weatherSpellRow),
    System: numbered(household.systems, systemRow),
    Filter: numbered(household.filters, filterRow),
    Device: numbered(household.devices, deviceRow),
  }
}

export const DESCRIBED_TABLES = ['DustEvent', 'WeatherSpell', 'System', 'Filter', 'Device'] as const
export type DescribedTable = (typeof DESCRIBED_TABLES)[number]

function dustEventRow({ kind, from, to }: DustEvent): Row {
  return { kind, from, to }
}

function weatherSpellRow({ kind, from, to, highF, lowF }: WeatherSpell): Row {
  return { kind, from, to, highF, lowF }
}

function systemRow({ id, name, delivery, heat, cool, fan, thermostat, airflowCfm, dustStart }: System): Row {
  return {
    id,
    name,
    delivery,
    heatSource: heat?.source ?? null,
    heatInputBtuh: heat?.inputBtuh ?? null,
    heatOutputBtuh: heat?.outputBtuh ?? null,
    heatEfficiency: heat?.efficiency ?? null,
    heatRiseF: heat?.riseF ?? null,
    heatInstalled: heat?.installed ?? null,
    coolSource: cool?.source ?? null,
    coolTons: cool?.tons ?? null,
    coolInstalled: cool?.installed ?? null,
    fanMode: fan?.mode ?? null,
    fanMinutesPerHour: fan?.mode === 'circulate' ? fan.minutesPerHour : null,
    heatSetpointF: thermostat?.heatSetpointF ?? null,
    coolSetpointF: thermostat?.coolSetpointF ?? null,
    airflowStated: airflowCfm !== undefined,
    airflowHeatCfm: airflowCfm?.heat ?? null,
    airflowCoolCfm: airflowCfm?.cool ?? null,
    dustMedian: dustStart?.median ?? null,
    dustSpread: dustStart?.spread ?? null,
    dustSystems: dustStart?.systems ?? null,
  }
}

function filterRow({ id, system, place, nominal, medium, merv, labelLimitDays }: Filter): Row {
  return { id, system, place, ...nominal, medium, merv: merv ?? null, labelLimitDays: labelLimitDays ?? null }
}

function deviceRow({ id, kind, system, made, endOfLife }: Device): Row {
  return { id, kind, system: system ?? null, made: made ?? null, endOfLife: endOfLife ?? null }
}

/** A reading as columns. */
export function readingRow(reading: Reading): Row {
  const bill = reading.source === 'bill' ? reading : null
  const hours = reading.source === 'bill' ? null : reading
  return {
    system: reading.system,
    from: reading.from,
    to: reading.to,
    source: reading.source,
    heatHours: hours?.heatHours ?? null,
    coolHours: hours?.coolHours ?? null,
    fanHours: hours?.fanHours ?? null,
    therms: bill?.therms ?? null,
    baseTherms: bill?.baseTherms ?? null,
  }
}
