import type { Hazard } from './types'

/** What was met or asked about, as a line of the log or the brief says it. */
export const HAZARD_WORDS: Record<Hazard, string> = {
  gas: 'a gas smell',
  co: 'a CO alarm, or people unwell',
  fire: 'smoke, sparks or a burnt smell',
  flood: 'a flood',
  steam: 'steam',
  people: 'someone unwell, or too cold or hot',
  shock: 'a shock',
  water: 'water near electric parts',
  boom: 'a bang, or soot',
  oil: 'spilled oil',
}
