import { type DayNumber, dayNumber } from './day'
import { plural } from './day-words'
import type { DustEvent, Household } from './household'
import type { Mark, Tables } from './tables'

/** One factor of the dust, named for people. */
export interface DustFactor {
  name: 'people' | 'pets' | 'smoking' | 'carpet'
  say: string
  factor: number
  mark: Mark
}

type DustFacts = Pick<Household, 'people' | 'pets' | 'petFactor' | 'smoking' | 'carpet'>
type DustTables = Pick<Tables, 'figures' | 'pets'>

/** The factors by which a household's dust differs from the reference home's (model, section 4). */
export function dustFactors(home: DustFacts, tables: DustTables): DustFactor[] {
  const { peopleEach, smoking, carpet } = tables.figures
  const pets = plural(home.pets, 'pet')
  return [
    {
      name: 'people',
      say: plural(home.people, 'person', 'people'),
      factor: peopleFactor(home, tables),
      mark: peopleEach.mark,
    },
    { name: 'pets', say: pets, factor: petFactor(home, tables), mark: tables.pets[0]?.mark ?? 'P' },
    ...(home.smoking
      ? [{ name: 'smoking', say: 'smoking indoors', factor: smoking.value, mark: smoking.mark } as const]
      : []),
    ...(home.carpet
      ? [{ name: 'carpet', say: 'mostly carpet', factor: carpet.value, mark: carpet.mark } as const]
      : []),
  ]
}

/** Dust of the air in µg/m³ with the household's factors, without events and cleaning: 55 in the reference home. */
export function dustConcentration(home: DustFacts, tables: DustTables): number {
  const { dustMicrogramsPerM3, smoking, carpet } = tables.figures
  return (
    dustMicrogramsPerM3.value *
    peopleFactor(home, tables) *
    petFactor(home, tables) *
    (home.smoking ? smoking.value : 1) *
    (home.carpet ? carpet.value : 1)
  )
}

function peopleFactor(home: DustFacts, { figures }: DustTables): number {
  return figures.peopleBase.value + figures.peopleEach.value * home.people
}

function petFactor(home: DustFacts, { pets }: DustTables): number {
  const row = pets[Math.min(home.pets, pets.length - 1)]
  if (!row) throw new Error('the table of pets is empty')
  return home.petFactor ?? row.value
}

// No air is so dusty; a file may name so many events at once that their product is no number any more.
const MOST_EVENT_FACTOR = 1e6

/** The product of all events that hold on a day: 1 on most days. */
export function eventFactor(events: readonly DustEvent[], day: DayNumber, table: Tables['dustEvents']): number {
  const factor = events.reduce(
    (product, e) => (dayNumber(e.from) <= day && day <= dayNumber(e.to) ? product * table[e.kind].value : product),
    1,
  )
  return Math.min(MOST_EVENT_FACTOR, factor)
}
