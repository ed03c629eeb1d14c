import type { Day } from '@/lib/core/day'
import type { Device } from '@/lib/core/household'
import { Answers, type DescribeTables, type DraftAnswers, known, type Read, type Typed } from './answers'
import { readDevices } from './devices'
import { type FilterRead, readFilter } from './filter'
import { type People, readPeople } from './people'
import { type Place, readPlace } from './place'
import { numbersOf, type Step, unitsOf } from './steps'
import { readSystem, type SystemRead } from './system'
import { readWhen } from './when'

export type Services = { heat: Day | null; cool: Day | null }

export type StepValue =
  | { kind: 'home'; place: Place }
  | { kind: 'people'; people: People }
  | { kind: 'system'; read: SystemRead; services: Services }
  | { kind: 'filter'; read: FilterRead; changed: Day | null }
  | { kind: 'devices'; devices: Device[] }
  | { kind: 'check' }

/** What one screen of a draft comes to, or everything that is wrong with it. */
export function readStep(step: Step, draft: DraftAnswers, tables: DescribeTables, on: Day): Read<StepValue> {
  const typed = draft[step] ?? {}
  const units = unitsOf(draft)
  if (step === 'home') return mapped(readPlace(typed, tables), (place) => ({ kind: 'home', place }))
  if (step === 'people') return mapped(readPeople(typed), (people) => ({ kind: 'people', people }))
  if (step === 'devices') return mapped(readDevices(typed, on), (devices) => ({ kind: 'devices', devices }))
  if (step.startsWith('system-')) {
    const system = readSystem(typed, units)
    // Of what is not there no service is asked, whatever its hidden fields hold.
    const asked = (name: 'heat' | 'cool') => !system.ok || system.value.system[name] !== undefined
    const heat = asked('heat') ? whenOf(typed, 'heat-service', on) : NEVER
    const cool = asked('cool') ? whenOf(typed, 'cool-service', on) : NEVER
    const read = joined(system, [heat, cool])
    return mapped(read, (value) => ({
      kind: 'system',
      read: value,
      services: { heat: dayOf(heat), cool: dayOf(cool) },
    }))
  }
  if (step.startsWith('filter-')) {
    const system = readSystem(draft[`system-${numbersOf(step).system}`] ?? {}, units)
    const delivery = system.ok ? system.value.system.delivery : 'ducted'
    const changed = typed.place?.[0] === 'none' ? NEVER : whenOf(typed, 'changed', on)
    const read = joined(readFilter(typed, { delivery, common: tables.commonSizes }), [changed])
    return mapped(read, (value) => ({ kind: 'filter', read: value, changed: dayOf(changed) }))
  }
  return { ok: true, value: { kind: 'check' } }
}

const NEVER: Read<Day | null> = { ok: true, value: null }

function whenOf(typed: Typed, name: string, on: Day): Read<Day | null> {
  const answers = new Answers(typed)
  const day = readWhen(answers, name, on)
  return answers.result(() => known(day))
}

function dayOf(read: Read<Day | null>): Day | null {
  return read.ok ? read.value : null
}

function mapped<A, B>(read: Read<A>, map: (value: A) => B): Read<B> {
  return read.ok ? { ok: true, value: map(read.value) } : read
}

/** One reading with the faults of others that stand on the same screen. */
function joined<A>(read: Read<A>, others: Read<unknown>[]): Read<A> {
  const faults = [read, ...others].flatMap((one) => (one.ok ? [] : one.faults))
  return read.ok && faults.length === 0 ? read : { ok: false, faults }
}
