import type { ClimateChoices } from '@/app/describe/fields/place-fields'
import { climateChoices, DESCRIBE_TABLES } from '@/app/describe/tables'
import { tables } from '@/content/tables'
import { climateFollows, climateFollowsInWords } from '@/lib/core/climate-follows'
import type { Fault } from '@/lib/core/fault'
import type { DeviceKind, FilterPlace, Household } from '@/lib/core/household'
import type { DraftAnswers, Typed } from '@/lib/forms/describe/answers'
import { alarmRows, tickable } from '@/lib/forms/describe/devices'
import { placesFor, sizeSaid } from '@/lib/forms/describe/filter'
import { readPlace } from '@/lib/forms/describe/place'
import { numbersOf, type Step, stepsOf, unitsOf } from '@/lib/forms/describe/steps'
import { readSystem } from '@/lib/forms/describe/system'

/** What a screen is drawn from. */
export type Screen = { title: string; lead: string; follows?: string; typed: Typed; faults: Fault[] } & (
  | { kind: 'home'; climates: ClimateChoices }
  | { kind: 'people' }
  | { kind: 'system'; units: Household['units']; number: number }
  | { kind: 'filter'; places: FilterPlace[]; sizeSaid: string[]; number: number }
  | { kind: 'devices'; tickable: { value: string; kind: DeviceKind; label: string }[]; rows: number }
)

/** One screen of a draft; what was not answered yet starts from what is safe to start from. */
export function screenOf(step: Step, draft: DraftAnswers, shown: string): Screen {
  const answered = draft[step]
  const isFresh = answered === undefined || Object.keys(answered).length === 0
  const typed = isFresh ? startOf(step, draft) : answered
  const sizes = shown === 'size' ? sizeSaid(typed, DESCRIBE_TABLES.commonSizes) : null
  const faults = sizes && !sizes.ok ? sizes.faults : []
  const base = { typed, faults }
  if (step === 'home') {
    return {
      ...base,
      kind: 'home',
      title: 'The home, and its weather',
      lead: 'A few screens, about five minutes. Whatever you don’t know you may leave: something safe is reckoned with, and the plan names it.',
      climates: climateChoices(),
    }
  }
  if (step === 'people')
    return {
      ...base,
      kind: 'people',
      title: 'Who lives there',
      lead: 'People and animals make the dust that fills a filter.',
      ...followsOf(draft),
    }
  if (step === 'devices') {
    const kinds = tickable([])
    return {
      ...base,
      kind: 'devices',
      title: 'Alarms and small devices',
      lead: 'They keep the home safe or make a mess when forgotten.',
      tickable: kinds,
      rows: Math.max(2, alarmRows(typed)) + (shown === 'more' ? 2 : 0),
    }
  }
  const { system, filter } = numbersOf(step)
  const read = draft[`system-${system}`] ? readSystem(draft[`system-${system}`] ?? {}, unitsOf(draft)) : undefined
  if (step.startsWith('system-')) {
    return {
      ...base,
      kind: 'system',
      title: system === 1 ? 'What heats and cools it' : `System ${system}`,
      lead:
        system === 1
          ? 'One system a screen: if the home has several, describe one here and add the others after it.'
          : 'Another unit with its own air or its own pipes.',
      units: unitsOf(draft),
      number: system,
    }
  }
  const name = read?.ok ? read.value.system.name : 'the system'
  return {
    ...base,
    kind: 'filter',
    title: filter === 1 ? 'Its filter' : `Filter ${filter}`,
    lead: `Of: ${name}. A filter is due when it is full, so everything here moves its day.`,
    places: placesFor(read?.ok ? read.value.system.delivery : 'ducted').filter((place) => place !== 'ventilator'),
    sizeSaid: sizes?.ok ? sizes.value : [],
    number: filter,
  }
}

function followsOf(draft: DraftAnswers): { follows?: string } {
  const place = readPlace(draft.home ?? {}, DESCRIBE_TABLES)
  if (!place.ok) return {}
  return { follows: climateFollowsInWords(climateFollows(place.value.climate, tables, '2026-01-01')) }
}

function startOf(step: Step, draft: DraftAnswers): Typed {
  if (step === 'home') return { units: ['us'] }
  if (step === 'people') return { pets: ['0'], 'hard-water': ['unknown'] }
  if (step.startsWith('system-')) return { fan: ['unknown'] }
  if (step.startsWith('filter-')) return { 'size-way': ['printed'] }
  const cools = stepsOf(draft).some((name) => {
    const read = name.startsWith('system-') ? readSystem(draft[name] ?? {}, unitsOf(draft)) : undefined
    return read?.ok && read.value.system.cool !== undefined
  })
  return {
    'alarm-0': ['smoke-alarm'],
    'alarm-1': ['co-alarm'],
    device: cools ? ['new:condensate-drain'] : [],
  }
}
