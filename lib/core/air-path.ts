import { type Airflow, faceAreaFt2 } from './airflow'
import type { Filter, FilterPlace } from './household'
import type { MediumRow, Tables } from './tables'

/** One filter in its system's air: how much air and dust reach it, and what it does with them. */
export interface FilterInAir {
  filter: Filter
  row: MediumRow
  faceAreaFt2: number
  /** Share of the system's air that passes this filter; null for a ventilator's, which has its own air. */
  share: number | null
  /** Share of the dust that filters before it let through. */
  reached: number
  /** What becomes of the dust; null for filters without a loading model. */
  loading: { arrestance: number; capacityGrams: number } | null
}

export interface AirPath {
  filters: FilterInAir[]
  /** Arrestance of all the system's filters in the air's way. */
  arrestance: number
}

const BEHIND: ReadonlySet<FilterPlace> = new Set(['furnace-slot', 'in-cabinet', 'media-cabinet'])

/** Whether filters of this place are parallel openings of the return, rather than behind all of them. */
function isOpening(place: FilterPlace): boolean {
  return !BEHIND.has(place) && place !== 'ventilator'
}

/** The table row that serves a filter: by medium, rating and depth; an unknown rating counts as MERV 8. */
export function mediumRow(filter: Filter, tables: Tables): MediumRow {
  if (filter.medium === 'screen')
    return filter.place === 'ventilator' ? tables.screens.ventilator : tables.screens.ductless
  const merv = filter.merv ?? tables.figures.assumedMerv.value
  const row = tables.media.find(
    (r) => r.media.includes(filter.medium) && merv >= r.fromMerv && filter.nominal.depthIn < r.belowDepthIn,
  )
  if (!row) throw new Error(`no row in the table of media for ${filter.medium}`)
  return row
}

/** Orders one system's filters along its air (model, section 3): openings are parallel, the rest stand behind them. */
export function airPath(filters: readonly Filter[], tables: Tables): AirPath {
  const openings: FilterInAir[] = []
  const behind: FilterInAir[] = []
  const all: FilterInAir[] = []
  for (const filter of filters) {
    const f = placed(filter, tables)
    all.push(f)
    if (BEHIND.has(filter.place)) behind.push(f)
    else if (isOpening(filter.place)) openings.push(f)
  }
  shareAir(openings)
  shareAir(behind)
  const before = flowWeighted(openings)
  for (const f of behind) f.reached = 1 - before
  return { filters: all, arrestance: 1 - (1 - before) * (1 - flowWeighted(behind)) }
}

function placed(filter: Filter, tables: Tables): FilterInAir {
  const row = mediumRow(filter, tables)
  const area = faceAreaFt2(filter)
  const loading =
    row.loading === null || filter.place === 'ventilator'
      ? null
      : { arrestance: row.loading.arrestance, capacityGrams: row.loading.capacityGramsPerFt2 * area }
  return { filter, row, faceAreaFt2: area, share: null, reached: 1, loading }
}

function shareAir(parallel: FilterInAir[]): void {
  let total = 0
  for (const f of parallel) total += f.faceAreaFt2
  for (const f of parallel) f.share = f.faceAreaFt2 / total
}

function flowWeighted(parallel: FilterInAir[]): number {
  let sum = 0
  for (const f of parallel) sum += (f.share ?? 0) * (f.loading?.arrestance ?? 0)
  return sum
}

/** Air through one filter when the blower moves the most, cfm; null where that is not the system's air. */
export function airThroughCfm(f: FilterInAir, airflow: Airflow): number | null {
  return f.share === null ? null : f.share * airflow.greatest
}

/** Velocity of that air at the filter's face, fpm: 1200 cfm through 16 × 25 in is 432. */
export function faceVelocityFpm(f: FilterInAir, airflow: Airflow): number | null {
  const cfm = airThroughCfm(f, airflow)
  return cfm === null ? null : cfm / f.faceAreaFt2
}

/** Resistance of the clean filter, in. w.g.; a full one has twice that. */
export function cleanPressureDropInWg(f: FilterInAir, airflow: Airflow): number | null {
  const velocity = faceVelocityFpm(f, airflow)
  const { loading } = f.row
  if (velocity === null || loading === null) return null
  return loading.pressureDropAt300InWg * (velocity / 300) ** loading.pressureExponent
}

/** The greatest face velocity that suits the place, fpm; null where none is given. */
export function velocityLimitFpm(place: FilterPlace, tables: Pick<Tables, 'figures'>): number | null {
  if (BEHIND.has(place)) return tables.figures.cabinetVelocityFpm.value
  return place.endsWith('-grille') ? tables.figures.grilleVelocityFpm.value : null
}
