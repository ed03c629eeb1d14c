import type { Day } from '@/lib/core/day'
import type { Assumed, Device, Filter, Household, LogRecord, System } from '@/lib/core/household'
import { freshId, known } from './answers'
import type { People } from './people'
import type { Place } from './place'
import type { Services, StepValue } from './read-step'
import { numbersOf, type Step } from './steps'

/** One home from what its screens came to; first described on `on`. */
export function assemble(values: { step: Step; value: StepValue }[], on: Day): Household {
  const assumed: Assumed[] = []
  const systems: System[] = []
  const filters: Filter[] = []
  const records: LogRecord[] = []
  let devices: Device[] = []
  let place: Place | undefined
  let people: People | undefined
  const byNumber = new Map<number, System>()
  for (const { step, value } of values) {
    if (value.kind === 'home') place = value.place
    else if (value.kind === 'people') people = value.people
    else if (value.kind === 'devices') devices = value.devices
    else if (value.kind === 'system') {
      const id = freshId(
        value.read.system.name,
        systems.map((system) => system.id),
        'system',
      )
      const system = { id, ...value.read.system }
      systems.push(system)
      byNumber.set(numbersOf(step).system, system)
      assumed.push(...value.read.assumed.map((code) => ({ code, subject: id })))
      records.push(...serviceRecords(system, value.services))
    } else if (value.kind === 'filter') {
      const system = byNumber.get(numbersOf(step).system)
      const { filter } = value.read
      if (!system || !filter) continue
      const id = freshId(
        filter.place,
        filters.map((one) => one.id),
        'filter',
      )
      filters.push({ id, system: system.id, ...filter })
      assumed.push(...value.read.assumed.map((code) => ({ code, subject: id })))
      if (value.changed) records.push({ on: value.changed, kind: 'filter-changed', filter: id })
    }
  }
  const home = known(place)
  const { assumed: unknownPlace, ...where } = home
  const { assumed: unknownPeople, ...who } = known(people)
  const all = [...unknownPlace, ...unknownPeople, ...assumed]
  return {
    id: freshId(home.name, [], 'home'),
    ...where,
    since: on,
    ...who,
    ...(all.length > 0 && { assumed: all }),
    dustEvents: [],
    systems,
    filters: [...filters, ...ventilatorScreens(devices, systems, filters)],
    devices,
    records,
    readings: [],
  }
}

const BOILER = /boiler$/

function serviceRecords(system: System, { heat, cool }: Services): LogRecord[] {
  const records: LogRecord[] = []
  const add = (on: Day | null, task: 'boiler-service' | 'heating-service' | 'cooling-service') =>
    on && records.push({ on, kind: 'service-done', task, subject: system.id })
  if (system.heat) add(heat, BOILER.test(system.heat.source) ? 'boiler-service' : 'heating-service')
  if (system.cool) add(cool, 'cooling-service')
  return records
}

/** A ventilator has screens to wash, and nobody thinks of them as filters: they come with it. */
export function ventilatorScreens(
  devices: readonly Device[],
  systems: readonly System[],
  filters: readonly Filter[],
): Filter[] {
  const [system] = systems
  const has = devices.some(({ kind }) => kind === 'erv' || kind === 'hrv')
  if (!system || !has || filters.some(({ place }) => place === 'ventilator')) return []
  const id = freshId(
    'ventilator-screen',
    filters.map((one) => one.id),
    'filter',
  )
  return [
    {
      id,
      system: system.id,
      place: 'ventilator',
      nominal: { widthIn: 12, heightIn: 9, depthIn: 0.5 },
      medium: 'screen',
    },
  ]
}
