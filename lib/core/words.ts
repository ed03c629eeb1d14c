import { plural } from './day-words'
import type { Doer, Household, Light, Task } from './household'
import type { Basis, State } from './plan-types'
import type { Mark } from './tables'

const TASKS: Record<Task, string> = {
  'change-filter': 'Change the filter',
  'wash-filter': 'Wash the filter',
  'look-at-filter': 'Look at the filter',
  'heating-service': 'Heating service',
  'cooling-service': 'Cooling service',
  'boiler-service': 'Boiler service',
  'condensate-look': 'Look whether the water drains',
  'humidifier-pad': 'Change the humidifier pad',
  'outdoor-unit-clear': 'Clear around the outdoor unit',
  'ventilator-hoods': 'Clean the ventilator’s outside hoods',
  'ventilator-core': 'Clean the ventilator’s core',
  'water-heater-look': 'Look at the water heater',
  'alarm-test': 'Test the alarm',
  'alarm-replace': 'Replace the alarm',
}

/** `Change the filter`: what is to be done, as a heading. */
export function taskInWords(task: Task): string {
  return TASKS[task]
}

const DONE: Record<Task, string> = {
  'change-filter': 'Filter changed',
  'wash-filter': 'Filter washed',
  'look-at-filter': 'Filter looked at',
  'heating-service': 'Heating service done',
  'cooling-service': 'Cooling service done',
  'boiler-service': 'Boiler service done',
  'condensate-look': 'Looked whether the water drains',
  'humidifier-pad': 'Humidifier pad changed',
  'outdoor-unit-clear': 'Outdoor unit cleared',
  'ventilator-hoods': 'Ventilator hoods cleaned',
  'ventilator-core': 'Ventilator core cleaned',
  'water-heater-look': 'Water heater looked at',
  'alarm-test': 'Alarm tested',
  'alarm-replace': 'Alarm replaced',
}

/** `Filter changed`: what was done, for the log. */
export function taskDoneInWords(task: Task): string {
  return DONE[task]
}

/** `you`, `a licensed technician`. */
export function doerInWords(doer: Doer): string {
  return doer === 'resident' ? 'you' : 'a licensed technician'
}

const STATES: Record<State, string> = { overdue: 'Overdue', due: 'Due now', soon: 'Within two weeks', later: 'Later' }

export function stateInWords(state: State): string {
  return STATES[state]
}

const BASES: Record<Basis, string> = {
  loading: 'the filter is full by then',
  calendar: 'the longest a filter of this kind should stay in',
  label: 'the limit printed on the filter',
  runtime: 'the hours it has run',
  season: 'before the season starts',
  age: 'its age',
  'never-recorded': 'nothing is recorded about it yet',
}

/** What set the day, to complete "What set the day: …". */
export function basisInWords(basis: Basis): string {
  return BASES[basis]
}

const LIGHTS: Record<Light, string> = {
  clear: 'Light comes through all over',
  half: 'Light comes through in places',
  dark: 'Hardly any light comes through',
}

/** What a person sees who holds the filter to a lamp. */
export function lightInWords(light: Light): string {
  return LIGHTS[light]
}

/** `3 people, 2 pets`: a line about the home. */
export function peopleInWords({ people, pets }: Pick<Household, 'people' | 'pets'>): string {
  const who = plural(people, 'person', 'people')
  return pets === 0 ? who : `${who}, ${plural(pets, 'pet')}`
}

const MARKS: Record<string, string> = {
  S: 'published standard, regulation or handbook',
  G: 'government or agency guidance',
  D: 'open data',
  P: 'common practice in the trade, no source',
  C: 'our own choice',
}

/** `common practice in the trade, no source`; a `?` adds that the source is named from memory. */
export function markInWords(mark: Mark): string {
  const words = MARKS[mark.charAt(0)] ?? mark
  return mark.endsWith('?') ? `${words}, from memory` : words
}
