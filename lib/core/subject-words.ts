import { placeName, sizeInWords } from './filter-words'
import type { Device, DeviceKind, Filter, Household, System } from './household'

const DEVICES: Record<DeviceKind, string> = {
  humidifier: 'humidifier',
  dehumidifier: 'dehumidifier',
  erv: 'energy recovery ventilator',
  hrv: 'heat recovery ventilator',
  'water-heater-gas': 'gas water heater',
  'water-heater-electric': 'electric water heater',
  'smoke-alarm': 'smoke alarm',
  'co-alarm': 'carbon monoxide alarm',
  'condensate-drain': 'drain line',
}

/** What a home is called, and the building it stands in, if any. */
export interface Named {
  name: string
  building?: string | null
}

/** A home told apart from those in other buildings: `2B, Elm Court`; `Elm Court 2B` says its building itself. */
export function homeInWords({ name, building }: Named): string {
  if (!building || name.toLowerCase().includes(building.toLowerCase())) return name
  return `${name}, ${building}`
}

export function deviceInWords(kind: DeviceKind): string {
  return DEVICES[kind]
}

/**
 * What an item is about, told apart from its likes in the home: `wall grille`, `wall grille, 20 × 25 × 1`,
 * `Main system`, `smoke alarm`. A subject that the household doesn't hold comes back as its id.
 */
export function subjectInWords(household: Household, subject: string): string {
  const filter = household.filters.find(({ id }) => id === subject)
  if (filter) return filterName(household, filter)
  const system = household.systems.find(({ id }) => id === subject)
  if (system) return systemInWords(household, system)
  const device = household.devices.find(({ id }) => id === subject)
  return device ? deviceName(household, device) : subject
}

/** `Main system`; two of one name are told apart. */
export function systemInWords({ systems }: Pick<Household, 'systems'>, { id, name }: System): string {
  return systems.some((other) => other.id !== id && other.name === name) ? `${name}, “${id}”` : name
}

/** The systems of a home to choose from. */
export function systemChoices(household: Pick<Household, 'systems'>): { id: string; name: string }[] {
  return household.systems.map((system) => ({ id: system.id, name: systemInWords(household, system) }))
}

function filterName(household: Household, filter: Filter): string {
  const alike = household.filters.filter(({ id, place }) => id !== filter.id && place === filter.place)
  if (alike.length === 0) return placeName(filter.place)
  const size = sizeInWords(filter.nominal)
  const otherSystem = alike.every(({ system }) => system !== filter.system)
  const system = household.systems.find(({ id }) => id === filter.system)
  if (otherSystem && system) return `${placeName(filter.place)}, ${systemInWords(household, system)}`
  if (alike.every(({ nominal }) => sizeInWords(nominal) !== size)) return `${placeName(filter.place)}, ${size}`
  return `${placeName(filter.place)}, “${filter.id}”`
}

function deviceName(household: Household, device: Device): string {
  const alike = household.devices.filter(({ kind }) => kind === device.kind)
  return alike.length > 1 ? `${deviceInWords(device.kind)}, “${device.id}”` : deviceInWords(device.kind)
}
