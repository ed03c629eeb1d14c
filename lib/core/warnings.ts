import type { Household } from './household'
import type { PlannedSystem } from './plan'
import type { Warning } from './plan-types'
import type { Tables } from './tables'

/** What the plan had to assume, said so that it can be set right. */
export function assumptions(
  home: Household,
  systems: ReadonlyMap<string, PlannedSystem>,
  { figures }: Tables,
): Warning[] {
  const warnings: Warning[] = []
  for (const { days } of systems.values()) {
    const { system, path } = days
    const moves = path.filters.some((f) => f.share !== null)
    if (moves && days.airflow.assumed) {
      const say = `The airflow is not known: ${figures.assumedAirflowCfm.value} cfm is assumed. The tons of the cooling or the output of the heating, from the rating plate, would tell.`
      warnings.push({ code: 'airflow-assumed', subject: system.id, say })
    }
    if (!system.thermostat && (system.heat || system.cool)) {
      const say = `The thermostat’s settings are not known: ${figures.defaultHeatSetpointF.value} °F for heating and ${figures.defaultCoolSetpointF.value} °F for cooling are assumed.`
      warnings.push({ code: 'set-points-assumed', subject: system.id, say })
    }
  }
  for (const filter of home.filters) {
    if (filter.merv === undefined && (filter.medium === 'pleated' || filter.medium === 'media')) {
      const say = `The filter’s rating is not known: MERV ${figures.assumedMerv.value} is assumed.`
      warnings.push({ code: 'rating-assumed', subject: filter.id, say })
    }
  }
  return warnings
}
