import { type DayNumber, dayNumber } from './day'
import { plural } from './day-words'
import { DUST_EVENT_KINDS, type DustEvent, type Household } from './household'
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

/**
 * The product of all events that hold on each of so many days from a day on: 1 on most. One pass over the events and
 * one over the days, for a file may name a hundred thousand events of two hundred years.
 */
export function eventFactors(
  events: readonly DustEvent[],
  { from, count }: { from: DayNumber; count: number },
  table: Tables['dustEvents'],
): Float64Array {
  const factors = new Float64Array(count).fill(1)
  for (const kind of DUST_EVENT_KINDS) {
    const own = events.filter((event) => event.kind === kind)
    if (own.length === 0) continue
    // By how many more or fewer events of this kind hold on a day than on the day before.
    const change = new Int32Array(count + 1)
    for (const event of own) {
      const [first, after] = [dayNumber(event.from) - from, dayNumber(event.to) - from + 1]
      if (after <= 0 || first >= count) continue
      change[Math.max(0, first)] = (change[Math.max(0, first)] as number) + 1
      change[Math.min(count, after)] = (change[Math.min(count, after)] as number) - 1
    }
    let holding = 0
    for (let i = 0; i < count; i++) {
      holding += change[i] as number
      if (holding > 0) factors[i] = Math.min(MOST_EVENT_FACTOR, (factors[i] as number) * table[kind].value ** holding)
    }
  }
  return factors
}
