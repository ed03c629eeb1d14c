import type { FilterPlace, Medium } from './household'

/**
 * Where a figure comes from: S published standard, regulation or handbook · G government or agency guidance ·
 * D open data · P common practice, no source · C our own choice. A `?` means from memory of the source.
 */
export const MARKS = ['S', 'S?', 'G', 'G?', 'D', 'D?', 'P', 'C'] as const
export type Mark = (typeof MARKS)[number]

/** One parameter of the model, to be reviewed and changed without touching code. */
export interface Figure {
  value: number
  unit: string
  mark: Mark
  reason: string
  source?: string
}

/** A row of the filter table: what a medium catches, holds and resists. */
export interface MediumRow {
  id: string
  /** For people: "pleated, 1 inch". */
  name: string
  medium: Medium
  /** Pleated and media filters take the deepest row whose `fromDepthIn` they reach; null for media with one row. */
  fromDepthIn: number | null
  /** Grams of dust a square foot of nominal face holds at the home end point; null: no loading model. */
  capacityGramsPerFt2: number | null
  /** Clean resistance at 300 fpm, in. w.g., and the exponent by which it grows with velocity. */
  pressureDropAt300InWg: number | null
  pressureExponent: number | null
  calendarLimitDays: number
  calendarMark: Mark
  calendarSource?: string
  /** Washed, not bought. */
  washable: boolean
  mark: Mark
  reason: string
}

/** Fraction of the dust caught, by medium and MERV. */
export interface ArrestanceRow {
  medium: Medium
  fromMerv: number
  arrestance: number
  pressureDropAt300InWg?: number
  mark: Mark
}

export interface ZoneRow {
  zone: number
  hdd65: number
  cdd65: number
  heatingDesignF: number
  coolingDesignF: number
  mark: Mark
}

export interface CommonSize {
  widthIn: number
  heightIn: number
  depthIn: number
}

/** How long a screen may go unwashed, by where it sits. */
export interface ScreenLimit {
  place: FilterPlace | 'other'
  days: number
  mark: Mark
  reason: string
}
