import { mediumInWords, placeInWords, sizeInWords } from './filter-words'
import type { Assumed, Household } from './household'
import type { PlannedSystem } from './plan'
import type { Warning } from './plan-types'
import { coolSourceInWords, sourceInWords } from './source-words'
import type { Tables } from './tables'
import { airflowInFull, temperatureInWords } from './unit-words'

/** What the plan had to assume, said so that it can be set right. */
export function assumptions(
  home: Household,
  systems: ReadonlyMap<string, PlannedSystem>,
  { figures }: Tables,
): Warning[] {
  const warnings: Warning[] = []
  const degrees = (f: number) => temperatureInWords(f, home.units)
  for (const { days } of systems.values()) {
    const { system, path } = days
    if (days.airflow.assumed && path.filters.some((f) => f.share !== null)) {
      const say = `The airflow is not known: ${airflowInFull(figures.assumedAirflowCfm.value, home.units)} is assumed. The tons of the cooling or the output of the heating, from the rating plate, would tell.`
      warnings.push({ code: 'airflow-assumed', subject: system.id, say })
    }
    if (!system.thermostat && (system.heat || system.cool)) {
      const say = `The thermostat’s settings are not known: ${degrees(figures.defaultHeatSetpointF.value)} for heating and ${degrees(figures.defaultCoolSetpointF.value)} for cooling are assumed.`
      warnings.push({ code: 'set-points-assumed', subject: system.id, say })
    }
  }
  for (const filter of home.filters) {
    if (filter.merv === undefined && (filter.medium === 'pleated' || filter.medium === 'media')) {
      const say = `The filter’s rating is not known: MERV ${figures.assumedMerv.value} is assumed.`
      warnings.push({ code: 'rating-assumed', subject: filter.id, say })
    }
  }
  for (const assumed of home.assumed ?? []) {
    const say = assumedInWords(home, assumed)
    if (say) warnings.push({ code: `${assumed.code}-assumed`, subject: assumed.subject || home.id, say })
  }
  return warnings
}

/** What stands for a fact that nobody knew, and where to find it out; null where what it was about is gone. */
export function assumedInWords(home: Household, { code, subject }: Assumed): string | null {
  const system = home.systems.find(({ id }) => id === subject)
  const filter = home.filters.find(({ id }) => id === subject)
  switch (code) {
    case 'climate':
      return 'The climate is not known: a mixed one is assumed. The nearest place in the list would tell, or the heating and cooling degree-days of a year, which the weather service gives.'
    case 'hard-water':
      return 'Whether the water is hard is not known: hard is assumed, so the humidifier’s pad comes up sooner. The water supplier knows.'
    case 'vulnerable':
      return 'Whether cold or heat could harm someone here sooner than others is not known: that it could is assumed.'
    case 'heat-source':
      return system?.heat
        ? `What makes the heat (${system.name}) is not known: ${sourceInWords(system.heat.source)} is assumed. Its rating plate or the last bill would tell.`
        : null
    case 'cool-source':
      return system?.cool
        ? `What cools (${system.name}) is not known: ${coolSourceInWords(system.cool.source)} is assumed.`
        : null
    case 'delivery':
      return system ? `How the heat comes (${system.name}) is not known: air from ducts is assumed.` : null
    case 'fan':
      return system
        ? `The fan setting (${system.name}) is not known: auto is assumed. The thermostat’s fan switch says it.`
        : null
    case 'filter-place':
      return filter
        ? `Where the filter sits is not known: one ${placeInWords(filter.place)} is assumed. Find shows where to look.`
        : null
    case 'filter-size':
      return filter
        ? `The filter’s size is not known: ${sizeInWords(filter.nominal)} is assumed. Read its frame before you buy one.`
        : null
    case 'filter-medium':
      return filter
        ? `What kind of filter it is (${placeInWords(filter.place)}) is not known: ${mediumInWords(filter.medium)} is assumed.`
        : null
  }
}
