import type { Filter, Household, Medium, System } from '@/lib/core/household'
import { coolBlows, type DayHours, derating, heatBlows, isPump } from './hours'

// A ductless head's filter is an opening like a grille's; the text names only the grilles.
const OPENINGS = ['ceiling-grille', 'wall-grille', 'floor-grille', 'ductless-head']
const CABINETS = ['furnace-slot', 'in-cabinet', 'media-cabinet']

export interface Airflow {
  heat: number
  cool: number
  fan: number
  /** The larger of what blows. */
  most: number
}

/** Model.md, section 3: cfm of a system. */
export function airflowOf(home: Household, system: System): Airflow {
  const z = home.elevationFt ?? 0
  const perDegree = 60 * 0.075 * 0.24 * (1 - 6.8754e-6 * z) ** 5.2559
  let cool = system.airflowCfm?.cool ?? (system.cool?.tons === undefined ? undefined : 400 * system.cool.tons)
  let heat = system.airflowCfm?.heat
  if (heat === undefined && isPump(system)) heat = cool
  else if (heat === undefined && heatBlows(system) && system.heat) {
    const { inputBtuh, efficiency, outputBtuh, riseF = 55 } = system.heat
    const output =
      outputBtuh ?? (inputBtuh !== undefined && efficiency !== undefined ? inputBtuh * efficiency : undefined)
    if (output !== undefined) heat = (output * derating(home, system)) / (perDegree * riseF)
  }
  cool ??= heat ?? 1000
  heat ??= cool
  const candidates = [...(heatBlows(system) ? [heat] : []), ...(coolBlows(system) ? [cool] : [])]
  return { heat, cool, fan: cool, most: candidates.length ? Math.max(...candidates) : cool }
}

/** Cubic metres through the system's blower on one day. */
export function airVolume(air: Airflow, hours: DayHours): number {
  const cubicFeet = 60 * (air.heat * hours.blownHeat + air.cool * hours.blownCool + air.fan * hours.fanOnly)
  return cubicFeet * 0.0283168
}

export interface MediumFigures {
  arrestance: number
  gramsPerFt2: number
  drop: number
  exponent: number
  limit: number
}

/** The filter table; null for the screens, which have no loading model. */
export function mediumOf(medium: Medium, merv: number | undefined, depth: number): MediumFigures | null {
  if (medium === 'screen') return null
  if (medium === 'fiberglass') return { arrestance: 0.6, gramsPerFt2: 8, drop: 0.05, exponent: 1.3, limit: 30 }
  if (medium === 'washable') return { arrestance: 0.7, gramsPerFt2: 12, drop: 0.22, exponent: 1.4, limit: 30 }
  const m = merv ?? 8
  const arrestance = m >= 13 ? 0.97 : m >= 11 ? 0.93 : 0.85
  if (depth < 1.5) {
    return { arrestance, gramsPerFt2: 13, drop: m >= 13 ? 0.28 : m >= 11 ? 0.2 : 0.15, exponent: 1.4, limit: 90 }
  }
  if (depth < 3.5) return { arrestance, gramsPerFt2: 30, drop: 0.11, exponent: 1.3, limit: 90 }
  if (depth < 4.5) return { arrestance, gramsPerFt2: 65, drop: 0.12, exponent: 1.2, limit: 180 }
  return { arrestance, gramsPerFt2: 90, drop: 0.12, exponent: 1.2, limit: 365 }
}

/** What a filter does to the system's air; null for screens, and for a ventilator's filter, which has its own air. */
export function loadingOf({ place, medium, merv, nominal }: Filter): MediumFigures | null {
  return place === 'ventilator' ? null : mediumOf(medium, merv, nominal.depthIn)
}

export function areaOf(filter: Filter): number {
  return (filter.nominal.widthIn * filter.nominal.heightIn) / 144
}

export function stands(filter: Filter): 'grille' | 'cabinet' | 'apart' {
  return OPENINGS.includes(filter.place) ? 'grille' : CABINETS.includes(filter.place) ? 'cabinet' : 'apart'
}

/** How the filters of one system share the air and the dust. */
export function pathOf(filters: Filter[], filter: Filter) {
  function together(where: 'grille' | 'cabinet') {
    const row = filters.filter((f) => stands(f) === where)
    const area = row.reduce((sum, f) => sum + areaOf(f), 0)
    const weighted = row.map((f) => {
      const arrestance = loadingOf(f)?.arrestance ?? 0
      return (arrestance * areaOf(f)) / area
    })
    return { area, arrestance: weighted.reduce((sum, a) => sum + a, 0) }
  }
  const grilles = together('grille')
  const cabinets = together('cabinet')
  const own = stands(filter)
  return {
    share: own === 'apart' ? 1 : areaOf(filter) / (own === 'grille' ? grilles.area : cabinets.area),
    reaches: own === 'cabinet' ? 1 - grilles.arrestance : 1,
    arrestance: 1 - (1 - grilles.arrestance) * (1 - cabinets.arrestance),
  }
}
