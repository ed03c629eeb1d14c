import type { Day } from './day'

/**
 * A household as the household file (`plenum: 1`) states it. Optional keys that a person left out stay
 * absent here, so that an export equals the import; the calculations supply and name what they assume.
 * Units stand in the names: F is °F, Btuh is Btu/h, Cfm is ft³/min, In is inches, Ft is feet.
 */
export interface Household {
  id: string
  name: string
  building?: string
  tenure: Tenure
  /** The day it was first described here: never-recorded tasks are due on it. */
  since?: Day
  /** An IANA zone name; every day of this household is a day there. */
  timeZone: string
  /** Display only; figures are always in the units of the names. */
  units: 'us' | 'metric'
  elevationFt?: number
  emergencyNumber?: string
  climate: Climate
  people: number
  pets: number
  /** Replaces the table's factor for pets. */
  petFactor?: number
  smoking: boolean
  carpet: boolean
  hardWater: boolean
  /** Anyone under 1, 65 or over, pregnant, ill, disabled or on a medical device. */
  vulnerable: boolean
  /** What nobody knew when it was described. Stays here: the household file has no such key. */
  assumed?: Assumed[]
  dustEvents: DustEvent[]
  /** Times hotter or colder than the climate of their season; left out where there were none. */
  weather?: WeatherSpell[]
  systems: System[]
  filters: Filter[]
  devices: Device[]
  records: LogRecord[]
  readings: Reading[]
}

export const ASSUMED_CODES = [
  'climate',
  'hard-water',
  'vulnerable',
  'heat-source',
  'cool-source',
  'delivery',
  'fan',
  'filter-place',
  'filter-size',
  'filter-medium',
] as const

/** A question answered with "don't know", for which a safe value stands; `subject` is the system's or filter's id, `''` for the home. */
export interface Assumed {
  code: (typeof ASSUMED_CODES)[number]
  subject: string
}

export const TENURES = ['own', 'rent', 'let'] as const
export type Tenure = (typeof TENURES)[number]

export type Climate = AnnualClimate | MonthlyClimate

interface DesignTemperatures {
  /** 99 % heating design temperature. */
  heatingDesignF: number
  /** 1 % cooling design temperature. */
  coolingDesignF: number
}

/** Heating and cooling degree-days to base 65 °F, °F·day a year. */
export interface AnnualClimate extends DesignTemperatures {
  kind: 'annual'
  hdd65: number
  cdd65: number
}

/** The same by month, January first: twelve values each. */
export interface MonthlyClimate extends DesignTemperatures {
  kind: 'monthly'
  hdd65: number[]
  cdd65: number[]
}

export const DUST_EVENT_KINDS = ['renovation', 'smoke', 'dust'] as const
export type DustEventKind = (typeof DUST_EVENT_KINDS)[number]

/** Both ends count. */
export interface DustEvent {
  kind: DustEventKind
  from: Day
  to: Day
}

export const WEATHER_KINDS = ['hot', 'cold'] as const
export type WeatherKind = (typeof WEATHER_KINDS)[number]

/** A heat wave or a cold spell: its usual high of a day and low of a night, °F. Both ends count. */
export interface WeatherSpell {
  kind: WeatherKind
  from: Day
  to: Day
  highF: number
  lowF: number
}

export const DELIVERIES = ['ducted', 'ductless', 'hydronic', 'room'] as const
export type Delivery = (typeof DELIVERIES)[number]

export const HEAT_SOURCES = [
  'gas-furnace',
  'propane-furnace',
  'oil-furnace',
  'electric-furnace',
  'heat-pump',
  'dual-fuel',
  'gas-boiler',
  'propane-boiler',
  'oil-boiler',
  'electric-boiler',
  'wall-furnace',
  'electric-baseboard',
] as const
export type HeatSource = (typeof HEAT_SOURCES)[number]

export const COOL_SOURCES = ['central-ac', 'heat-pump'] as const
export type CoolSource = (typeof COOL_SOURCES)[number]

export interface System {
  id: string
  name: string
  delivery: Delivery
  heat?: {
    source: HeatSource
    inputBtuh?: number
    outputBtuh?: number
    /** Output over input, 0.3–1.2; left out for heat pumps. */
    efficiency?: number
    /** Temperature rise of the rating plate. */
    riseF?: number
    /** A year. */
    installed?: number
  }
  cool?: { source: CoolSource; tons?: number; installed?: number }
  fan?: Fan
  thermostat?: { heatSetpointF: number; coolSetpointF: number }
  /** Measured airflow. */
  airflowCfm?: { heat?: number; cool?: number }
  /** Where its dust factor θ starts before looks of its own, told by other systems (model 1.1); left out, from the world. */
  dustStart?: DustStart
}

/** A system's dust factor before any look at its own filters: median of θ, standard deviation of ln θ, and how many systems told it. */
export interface DustStart {
  median: number
  spread: number
  systems: number
}

export type Fan = { mode: 'auto' } | { mode: 'on' } | { mode: 'circulate'; minutesPerHour: number }

export const FILTER_PLACES = [
  'ceiling-grille',
  'wall-grille',
  'floor-grille',
  'furnace-slot',
  'in-cabinet',
  'media-cabinet',
  'ductless-head',
  'ventilator',
] as const
export type FilterPlace = (typeof FILTER_PLACES)[number]

export const MEDIA = ['fiberglass', 'pleated', 'media', 'washable', 'screen'] as const
export type Medium = (typeof MEDIA)[number]

export interface NominalSize {
  widthIn: number
  heightIn: number
  depthIn: number
}

/** What is in place now. */
export interface Filter {
  id: string
  system: string
  place: FilterPlace
  nominal: NominalSize
  medium: Medium
  merv?: number
  /** The limit printed on the filter; replaces the calendar limit. */
  labelLimitDays?: number
}

export const DEVICE_KINDS = [
  'humidifier',
  'dehumidifier',
  'erv',
  'hrv',
  'water-heater-gas',
  'water-heater-electric',
  'smoke-alarm',
  'co-alarm',
  'condensate-drain',
] as const
export type DeviceKind = (typeof DEVICE_KINDS)[number]

export interface Device {
  id: string
  kind: DeviceKind
  system?: string
  made?: Day
  endOfLife?: Day
}

/** How much light passes a filter held to a lamp. */
export const LIGHTS = ['clear', 'half', 'dark'] as const
export type Light = (typeof LIGHTS)[number]

export const DOERS = ['resident', 'technician'] as const
export type Doer = (typeof DOERS)[number]

export const TASKS = [
  'change-filter',
  'wash-filter',
  'look-at-filter',
  'heating-service',
  'cooling-service',
  'boiler-service',
  'condensate-look',
  'humidifier-pad',
  'outdoor-unit-clear',
  'ventilator-hoods',
  'ventilator-core',
  'water-heater-look',
  'alarm-test',
  'alarm-replace',
] as const
export type Task = (typeof TASKS)[number]

/** What was done. A washed filter is recorded as changed: the model starts anew either way. */
export type LogRecord =
  | { on: Day; kind: 'filter-changed'; filter: string; light?: Light; fitted?: { medium: Medium; merv?: number } }
  | { on: Day; kind: 'filter-looked'; filter: string; light?: Light }
  | { on: Day; kind: 'service-done'; task: Task; subject: string; by?: Doer }

export const READING_SOURCES = ['thermostat', 'hour-meter', 'bill'] as const

/** Measured hours of one system between two days, both included. */
export type Reading =
  | {
      system: string
      from: Day
      to: Day
      source: 'thermostat' | 'hour-meter'
      heatHours?: number
      coolHours?: number
      /** Every hour the blower ran. */
      fanHours?: number
    }
  | { system: string; from: Day; to: Day; source: 'bill'; therms: number; baseTherms: number }
