import { type Day, dayText } from './day'
import { dateInWords } from './day-words'
import type { Climate, System } from './household'
import { Profiles } from './profile'
import { runSettings } from './runtime'
import { type SeasonKind, seasonOf } from './season'
import type { Tables } from './tables'
import { numberInWords } from './unit-words'

/** What a climate means for a furnace and an air conditioner at the customary settings. */
export interface ClimateFollows {
  heating: { from: Day; to: Day } | null
  cooling: { from: Day; to: Day } | null
  /** Hours a mean year. */
  heatHours: number
  coolHours: number
}

const SYSTEM: System = {
  id: 's',
  name: 's',
  delivery: 'ducted',
  heat: { source: 'gas-furnace' },
  cool: { source: 'central-ac' },
}

export function climateFollows(climate: Climate, tables: Tables, on: Day): ClimateFollows {
  const { figures } = tables
  const profile = new Profiles(figures).get(climate, runSettings(SYSTEM, climate, figures), { heat: 1, cool: 1 })
  const season = (kind: SeasonKind) => {
    const found = seasonOf(profile, kind, Number(on.slice(0, 4)), figures)
    // A season ends on the first day after it.
    return found && { from: dayText(found.start), to: dayText(found.end - 1) }
  }
  return {
    heating: season('heating'),
    cooling: season('cooling'),
    heatHours: profile.totals.heatLoad,
    coolHours: profile.totals.coolLoad,
  }
}

/** `Heating season about 3 October to 2 May, about 1,087 heating hours a year; …`. */
export function climateFollowsInWords({ heating, cooling, heatHours, coolHours }: ClimateFollows): string {
  const one = (what: string, season: ClimateFollows['heating'], hours: number) =>
    season
      ? `${what} season about ${bare(season.from)} to ${bare(season.to)}, about ${numberInWords(hours)} ${what.toLowerCase()} hours a year`
      : `no ${what.toLowerCase()} season`
  const text = `${one('Heating', heating, heatHours)}; ${one('Cooling', cooling, coolHours).replace('Cooling season', 'cooling season')}.`
  return text.charAt(0).toUpperCase() + text.slice(1)
}

function bare(day: Day): string {
  return dateInWords(day, day)
}
