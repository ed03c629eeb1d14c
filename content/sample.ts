import { addDays, type Day, daysBetween } from '@/lib/core/day'
import type { Household } from '@/lib/core/household'

/** The day the sample is written for; on any other day all its days move with that day. */
export const SAMPLE_DAY: Day = '2026-11-25'

/**
 * Three invented homes as the household file states them, as if written on the given day:
 * an overdue hall filter with two dogs after a renovation, in a cold climate; a heat pump with ductless heads in a
 * mild one; a renter's flat with a ceiling grille in a hot one. Nobody lives in them.
 */
export function sampleFile(on: Day): { plenum: 1; households: Household[] } {
  const shift = daysBetween(SAMPLE_DAY, on)
  return { plenum: 1, households: shifted([wrenfieldRoad(), coveLane(), marigoldFlat()], shift) }
}

/** The same value with every day in it moved: a text that is a day is one wherever it stands. */
function shifted<T>(value: T, days: number): T {
  if (typeof value === 'string') return (/^\d{4}-\d\d-\d\d$/.test(value) ? addDays(value, days) : value) as T
  if (Array.isArray(value)) return value.map((part) => shifted(part, days)) as T
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, shifted(part, days)])) as T
}

/** Cold, dusty and a little behind: one filter overdue, a service missed, an alarm near its end. */
function wrenfieldRoad(): Household {
  return {
    id: 'wrenfield-road',
    name: 'Wrenfield Road 14',
    tenure: 'own',
    since: '2025-10-04',
    timeZone: 'America/Chicago',
    units: 'us',
    elevationFt: 830,
    // Zone 6 of the table: a long winter and a short summer.
    climate: { kind: 'annual', hdd65: 7500, cdd65: 700, heatingDesignF: -10, coolingDesignF: 87 },
    people: 4,
    pets: 2,
    smoking: false,
    carpet: true,
    hardWater: true,
    vulnerable: true,
    dustEvents: [{ kind: 'renovation', from: '2026-09-21', to: '2026-10-16' }],
    systems: [
      {
        id: 'main',
        name: 'Furnace in the basement',
        delivery: 'ducted',
        heat: { source: 'gas-furnace', inputBtuh: 80_000, efficiency: 0.92, riseF: 55, installed: 2013 },
        cool: { source: 'central-ac', tons: 3, installed: 2013 },
        fan: { mode: 'circulate', minutesPerHour: 15 },
        thermostat: { heatSetpointF: 69, coolSetpointF: 76 },
      },
    ],
    filters: [
      {
        id: 'hall',
        system: 'main',
        place: 'wall-grille',
        nominal: { widthIn: 20, heightIn: 25, depthIn: 1 },
        medium: 'pleated',
        merv: 8,
      },
      {
        id: 'erv-screen',
        system: 'main',
        place: 'ventilator',
        nominal: { widthIn: 9, heightIn: 12, depthIn: 0.5 },
        medium: 'screen',
      },
    ],
    devices: [
      { id: 'humidifier', kind: 'humidifier', system: 'main' },
      { id: 'erv', kind: 'erv', system: 'main' },
      { id: 'water-heater', kind: 'water-heater-gas' },
      { id: 'smoke-upstairs', kind: 'smoke-alarm', made: '2017-02-10' },
      { id: 'smoke-basement', kind: 'smoke-alarm', made: '2022-05-03' },
      { id: 'co-hall', kind: 'co-alarm', made: '2020-01-20', endOfLife: '2027-01-20' },
    ],
    records: [
      { on: '2026-03-14', kind: 'filter-changed', filter: 'hall', light: 'dark' },
      { on: '2026-06-20', kind: 'filter-changed', filter: 'hall', light: 'half' },
      {
        on: '2026-08-30',
        kind: 'filter-changed',
        filter: 'hall',
        light: 'dark',
        fitted: { medium: 'pleated', merv: 8 },
      },
      { on: '2026-09-28', kind: 'filter-looked', filter: 'hall', light: 'half' },
      { on: '2026-10-04', kind: 'filter-changed', filter: 'erv-screen' },
      { on: '2025-09-18', kind: 'service-done', task: 'heating-service', subject: 'main', by: 'technician' },
      { on: '2026-04-22', kind: 'service-done', task: 'cooling-service', subject: 'main', by: 'technician' },
      { on: '2026-10-12', kind: 'service-done', task: 'humidifier-pad', subject: 'humidifier', by: 'resident' },
      { on: '2026-09-06', kind: 'service-done', task: 'outdoor-unit-clear', subject: 'main', by: 'resident' },
      { on: '2026-10-04', kind: 'service-done', task: 'ventilator-hoods', subject: 'erv', by: 'resident' },
      { on: '2026-07-11', kind: 'service-done', task: 'ventilator-core', subject: 'erv', by: 'resident' },
      { on: '2026-02-15', kind: 'service-done', task: 'water-heater-look', subject: 'water-heater', by: 'resident' },
      { on: '2026-11-01', kind: 'service-done', task: 'alarm-test', subject: 'smoke-upstairs', by: 'resident' },
      { on: '2026-11-01', kind: 'service-done', task: 'alarm-test', subject: 'smoke-basement', by: 'resident' },
      { on: '2026-11-01', kind: 'service-done', task: 'alarm-test', subject: 'co-hall', by: 'resident' },
    ],
    readings: [
      {
        system: 'main',
        from: '2026-09-01',
        to: '2026-09-30',
        source: 'thermostat',
        heatHours: 18.5,
        coolHours: 31,
        fanHours: 212,
      },
      {
        system: 'main',
        from: '2026-10-01',
        to: '2026-10-31',
        source: 'thermostat',
        heatHours: 74.2,
        coolHours: 1.5,
        fanHours: 239,
      },
    ],
  }
}

/** Mild, looked after and early to warn: a deep filter, two ductless heads upstairs. */
function coveLane(): Household {
  return {
    id: 'cove-lane',
    name: 'Cove Lane 3',
    tenure: 'own',
    since: '2026-03-07',
    timeZone: 'America/Los_Angeles',
    units: 'us',
    elevationFt: 140,
    climate: {
      kind: 'monthly',
      // The rainy north-west coast: published normals for heating (1981–2010), the summer months of cooling a guess.
      hdd65: [711, 605, 574, 440, 285, 144, 49, 36, 132, 380, 586, 755],
      cdd65: [0, 0, 0, 0, 7, 21, 68, 66, 11, 0, 0, 0],
      heatingDesignF: 27,
      coolingDesignF: 84,
    },
    people: 2,
    pets: 0,
    smoking: false,
    carpet: false,
    hardWater: false,
    vulnerable: false,
    dustEvents: [{ kind: 'smoke', from: '2026-08-29', to: '2026-09-05' }],
    systems: [
      {
        id: 'downstairs',
        name: 'Heat pump downstairs',
        delivery: 'ducted',
        heat: { source: 'heat-pump', installed: 2021 },
        cool: { source: 'heat-pump', tons: 2.5, installed: 2021 },
        thermostat: { heatSetpointF: 68, coolSetpointF: 75 },
      },
      {
        id: 'upstairs',
        name: 'Ductless heads upstairs',
        delivery: 'ductless',
        heat: { source: 'heat-pump', installed: 2023 },
        cool: { source: 'heat-pump', tons: 1, installed: 2023 },
        thermostat: { heatSetpointF: 67, coolSetpointF: 74 },
      },
    ],
    filters: [
      {
        id: 'closet',
        system: 'downstairs',
        place: 'media-cabinet',
        nominal: { widthIn: 16, heightIn: 25, depthIn: 4 },
        medium: 'media',
        merv: 11,
      },
      {
        id: 'bedroom-head',
        system: 'upstairs',
        place: 'ductless-head',
        nominal: { widthIn: 12, heightIn: 11, depthIn: 0.5 },
        medium: 'screen',
      },
      {
        id: 'study-head',
        system: 'upstairs',
        place: 'ductless-head',
        nominal: { widthIn: 12, heightIn: 11, depthIn: 0.5 },
        medium: 'screen',
      },
    ],
    devices: [
      { id: 'drain', kind: 'condensate-drain', system: 'downstairs' },
      { id: 'water-heater', kind: 'water-heater-electric' },
      { id: 'smoke-landing', kind: 'smoke-alarm', made: '2021-08-15' },
    ],
    records: [
      { on: '2026-06-05', kind: 'filter-changed', filter: 'closet', light: 'half' },
      { on: '2026-09-12', kind: 'filter-looked', filter: 'closet', light: 'clear' },
      { on: '2026-11-04', kind: 'filter-changed', filter: 'bedroom-head' },
      { on: '2026-11-16', kind: 'filter-changed', filter: 'study-head' },
      { on: '2026-09-15', kind: 'service-done', task: 'heating-service', subject: 'downstairs', by: 'technician' },
      { on: '2026-09-15', kind: 'service-done', task: 'heating-service', subject: 'upstairs', by: 'technician' },
      { on: '2026-05-20', kind: 'service-done', task: 'cooling-service', subject: 'downstairs', by: 'technician' },
      { on: '2026-05-20', kind: 'service-done', task: 'cooling-service', subject: 'upstairs', by: 'technician' },
      { on: '2026-10-30', kind: 'service-done', task: 'outdoor-unit-clear', subject: 'downstairs', by: 'resident' },
      { on: '2026-10-30', kind: 'service-done', task: 'outdoor-unit-clear', subject: 'upstairs', by: 'resident' },
      { on: '2026-08-02', kind: 'service-done', task: 'condensate-look', subject: 'drain', by: 'resident' },
      { on: '2026-04-11', kind: 'service-done', task: 'water-heater-look', subject: 'water-heater', by: 'resident' },
      { on: '2026-11-07', kind: 'service-done', task: 'alarm-test', subject: 'smoke-landing', by: 'resident' },
    ],
    readings: [],
  }
}

/** Hot, rented, one of several flats: the landlord looks after the equipment, the tenant after the grille. */
function marigoldFlat(): Household {
  return {
    id: 'marigold-2b',
    name: 'Marigold Terrace 2B',
    building: 'Marigold Terrace',
    tenure: 'rent',
    since: '2026-08-15',
    timeZone: 'America/Phoenix',
    units: 'us',
    elevationFt: 1120,
    climate: { kind: 'annual', hdd65: 950, cdd65: 4500, heatingDesignF: 38, coolingDesignF: 109 },
    people: 1,
    pets: 1,
    smoking: false,
    carpet: true,
    hardWater: true,
    vulnerable: false,
    dustEvents: [{ kind: 'dust', from: '2026-07-10', to: '2026-09-10' }],
    systems: [
      {
        id: 'flat',
        name: 'Air handler above the bath',
        delivery: 'ducted',
        heat: { source: 'electric-furnace', outputBtuh: 34_000, installed: 2016 },
        cool: { source: 'central-ac', tons: 2, installed: 2016 },
        fan: { mode: 'auto' },
        thermostat: { heatSetpointF: 68, coolSetpointF: 78 },
      },
    ],
    filters: [
      {
        id: 'ceiling',
        system: 'flat',
        place: 'ceiling-grille',
        nominal: { widthIn: 20, heightIn: 20, depthIn: 1 },
        medium: 'pleated',
        merv: 8,
        labelLimitDays: 90,
      },
    ],
    devices: [
      { id: 'drain', kind: 'condensate-drain', system: 'flat' },
      { id: 'smoke-bedroom', kind: 'smoke-alarm', made: '2019-11-05' },
    ],
    records: [
      { on: '2026-09-06', kind: 'filter-changed', filter: 'ceiling', light: 'dark' },
      { on: '2026-10-11', kind: 'filter-looked', filter: 'ceiling', light: 'clear' },
      // The landlord's technician came; the tenant wrote it down.
      { on: '2026-03-20', kind: 'service-done', task: 'cooling-service', subject: 'flat', by: 'technician' },
      { on: '2026-10-22', kind: 'service-done', task: 'heating-service', subject: 'flat', by: 'technician' },
      { on: '2026-11-01', kind: 'service-done', task: 'outdoor-unit-clear', subject: 'flat', by: 'resident' },
      { on: '2026-09-06', kind: 'service-done', task: 'condensate-look', subject: 'drain', by: 'resident' },
      { on: '2026-10-31', kind: 'service-done', task: 'alarm-test', subject: 'smoke-bedroom', by: 'resident' },
    ],
    readings: [],
  }
}
