import type { Day } from './day'
import type { Doer, Medium, Task } from './household'
import type { Mark } from './tables'

/** What is due, when and why: the one shape that pages, calendar, mail, HTTP and command line share. */
export interface Plan {
  on: Day
  households: HouseholdPlan[]
  supplies: Supply[]
  rounds: Round[]
}

export interface HouseholdPlan {
  id: string
  items: Item[]
  workings: Workings[]
  warnings: Warning[]
}

export const BASES = ['loading', 'calendar', 'label', 'runtime', 'season', 'age', 'never-recorded'] as const
export type Basis = (typeof BASES)[number]

export const STATES = ['overdue', 'due', 'soon', 'later'] as const
export type State = (typeof STATES)[number]

export interface Item {
  task: Task
  /** A filter, system or device of the household, by its id. */
  subject: string
  doer: Doer
  earliest: Day
  due: Day
  latest: Day
  /** Filters only: when to hold it to a lamp. */
  lookOn?: Day
  /** Filters only: the day if this home is dustier (early) or cleaner (late) than the estimate; null without a loading model. */
  early?: Day | null
  late?: Day | null
  basis: Basis
  state: State
  reasons: Reason[]
}

/** One sentence of the explanation, with its mark and, where there is one, its source. */
export interface Reason {
  say: string
  mark: Mark
  source?: string
}

/** The figures behind one filter's day. Null where the filter has no loading model. */
export interface Workings {
  filter: string
  /** Hours of the mean year, after scaling by measured hours. */
  heatHours: number
  coolHours: number
  /** Every hour the blower runs in the mean year. */
  fanHours: number
  /** This filter's share of the larger of heating and cooling airflow. */
  airflowCfm: number | null
  faceVelocityFpm: number | null
  /** With the household's factors, without events and cleaning. */
  dustMicrogramsPerM3: number
  arrestance: number | null
  capacityGrams: number | null
  pressureDropCleanInWg: number | null
  /** Dust caught over capacity at `on`, median θ; null also where no change is known. */
  loadedFraction: number | null
  theta: { q10: number; q50: number; q90: number } | null
}

export interface Warning {
  code: string
  subject: string
  say: string
}

export interface Supply {
  /** Nominal inches, `16x25x1`. */
  size: string
  medium: Medium
  merv: number | null
  count: number
}

/** One visit day. */
export interface Round {
  building: string
  doer: Doer
  on: Day
  items: { household: string; task: Task; subject: string }[]
}

/** One system's year, for the drawing: 365 days from `from`. Made by `systemYears` in year.ts. */
export interface SystemYear {
  system: string
  name: string
  from: Day
  /** One value a day, h. Measured where measured, else the scaled model. */
  heatHours: number[]
  coolHours: number[]
  filters: { filter: string; events: { on: Day; kind: 'changed' | 'looked' | 'forecast'; task: Task }[] }[]
  windows: { task: Task; subject: string; doer: Doer; earliest: Day; due: Day; latest: Day }[]
}

/** What one fact of the household does to a filter's day: the plan made again with that fact alone changed. Made by `effects` in effects.ts. */
export interface Effect {
  /** The fact in words that complete a sentence: "two pets". */
  fact: string
  /** What it was changed to: "no pets". */
  instead: string
  dueWithout: Day
  /** Negative: the fact brings the day forward by so many days. */
  days: number
  mark: Mark
  source?: string
}
