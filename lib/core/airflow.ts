import type { Filter, HeatSource, System } from './household'
import { coolBlows, heatBlows } from './runtime'
import type { Figures } from './tables'

/** Airflow of one system, cfm, by what the blower runs for. */
export interface Airflow {
  heat: number
  cool: number
  fan: number
  /** The larger of heating and cooling airflow, of what blows: what the filter must pass at once. */
  greatest: number
  /** Nothing was known, so a value was assumed. */
  assumed: boolean
}

const FUEL_BURNERS: ReadonlySet<HeatSource> = new Set([
  'gas-furnace',
  'propane-furnace',
  'oil-furnace',
  'gas-boiler',
  'propane-boiler',
  'oil-boiler',
  'wall-furnace',
  'dual-fuel',
])

/** Air pressure at an elevation as a share of sea level's: 0.832 at 5000 ft (standard atmosphere). */
export function pressureShare(elevationFt: number, figures: Figures): number {
  return (1 - figures.pressureLapsePerFt.value * elevationFt) ** figures.pressureExponent.value
}

/** Btu/(h·cfm·°F) at an elevation: 1.08 at sea level. */
export function airHeatFactor(elevationFt: number, figures: Figures): number {
  return figures.airHeatFactor.value * pressureShare(elevationFt, figures)
}

/** What a fuel burner's rating loses above 2000 ft: 0.8 at 5000 ft; 1 below and for everything else (NFPA 54). */
export function derating(source: HeatSource, elevationFt: number, figures: Figures): number {
  if (!FUEL_BURNERS.has(source) || elevationFt <= figures.derateFromFt.value) return 1
  return 1 - (figures.deratePer1000Ft.value * elevationFt) / 1000
}

/** Heating output, Btu/h, given or from input and efficiency, derated for elevation; null where it cannot be known. */
export function outputBtuh(heat: NonNullable<System['heat']>, elevationFt: number, figures: Figures): number | null {
  const rated =
    heat.outputBtuh ??
    (heat.inputBtuh !== undefined && heat.efficiency !== undefined ? heat.inputBtuh * heat.efficiency : null)
  return rated === null ? null : rated * derating(heat.source, elevationFt, figures)
}

/** Airflow of a system (model, section 3): measured, else from tons and heating output, else assumed. */
export function airflowOf(system: System, elevationFt: number, figures: Figures): Airflow {
  const tons = system.cool?.tons
  const cool = system.airflowCfm?.cool ?? (tons === undefined ? null : figures.cfmPerTon.value * tons)
  const heat = system.airflowCfm?.heat ?? heatingAirflow(system, cool, elevationFt, figures)
  const known = cool ?? heat ?? figures.assumedAirflowCfm.value
  const heatingCfm = heat ?? known
  const coolingCfm = cool ?? known
  const most = Math.max(heatBlows(system) ? heatingCfm : 0, coolBlows(system) ? coolingCfm : 0)
  return {
    heat: heatingCfm,
    cool: coolingCfm,
    fan: known,
    greatest: most > 0 ? most : known,
    assumed: cool === null && heat === null,
  }
}

function heatingAirflow(system: System, cool: number | null, elevationFt: number, figures: Figures): number | null {
  const { heat } = system
  if (!heat || !heatBlows(system)) return null
  // A heat pump moves the same air whichever way it pumps.
  if (heat.source === 'heat-pump' || heat.source === 'dual-fuel') return cool
  const output = outputBtuh(heat, elevationFt, figures)
  if (output === null) return null
  return output / (airHeatFactor(elevationFt, figures) * (heat.riseF ?? figures.temperatureRiseF.value))
}

/** Nominal face area, ft². */
export function faceAreaFt2(filter: Pick<Filter, 'nominal'>): number {
  return (filter.nominal.widthIn * filter.nominal.heightIn) / 144
}
