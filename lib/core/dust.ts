import { type DayNumber, dayNumber } from './day'
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

/** The factors by which a household's dust differs from the reference home's (model, section 4). */
export function dustFactors(home: DustFacts, tables: Pick<Tables, 'figures' | 'pets'>): DustFactor[] {
  const { figures } = tables
  const pets = tables.pets[Math.min(home.pets, tables.pets.length - 1)]
  if (!pets) throw new Error('the table of pets is empty')
  const people = {
    name: 'people',
    say: counted(home.people, 'person', 'people'),
    factor: figures.peopleBase.value + figures.peopleEach.value * home.people,
    mark: figures.peopleEach.mark,
  } as const
  const animals = {
    name: 'pets',
    say: counted(home.pets, 'pet', 'pets'),
    factor: home.petFactor ?? pets.value,
    mark: pets.mark,
  } as const
  return [
    people,
    animals,
    ...(home.smoking
      ? [
          {
            name: 'smoking',
            say: 'smoking indoors',
            factor: figures.smoking.value,
            mark: figures.smoking.mark,
          } as const,
        ]
      : []),
    ...(home.carpet
      ? [{ name: 'carpet', say: 'mostly carpet', factor: figures.carpet.value, mark: figures.carpet.mark } as const]
      : []),
  ]
}

/** Dust of the air in µg/m³ with the household's factors, without events and cleaning: 55 in the reference home. */
export function dustConcentration(home: DustFacts, tables: Pick<Tables, 'figures' | 'pets'>): number {
  return dustFactors(home, tables).reduce((dust, { factor }) => dust * factor, tables.figures.dustMicrogramsPerM3.value)
}

/** The product of all events that hold on a day: 1 on most days. */
export function eventFactor(events: readonly DustEvent[], day: DayNumber, table: Tables['dustEvents']): number {
  return events.reduce(
    (factor, e) => (dayNumber(e.from) <= day && day <= dayNumber(e.to) ? factor * table[e.kind].value : factor),
    1,
  )
}

function counted(n: number, one: string, many: string): string {
  return n === 0 ? `no ${many}` : n === 1 ? `one ${one}` : `${n} ${many}`
}
