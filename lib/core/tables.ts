import type { DustEventKind, Medium, NominalSize, Task } from './household'

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
  /** For people: "pleated, 1 inch". */
  name: string
  media: readonly Medium[]
  /** The row serves depths below this, in inches. */
  belowDepthIn: number
  fromMerv: number
  /** Null: no loading model. */
  loading: {
    arrestance: number
    /** Grams of dust a square foot of nominal face holds at the home end point. */
    capacityGramsPerFt2: number
    /** Clean resistance at 300 fpm, in. w.g., and the exponent by which it grows with velocity. */
    pressureDropAt300InWg: number
    pressureExponent: number
    mark: Mark
  } | null
  calendarLimitDays: number
  calendarMark: Mark
  calendarReason: string
  calendarSource?: string
}

/** A climate zone and the values to start from until the person gives their own station's. */
export interface ZoneRow {
  zone: number
  /** For people: "cold". */
  name: string
  hdd65: number
  cdd65: number
  heatingDesignF: number
  coolingDesignF: number
  mark: Mark
}

/** What a task is, for people, and on whose word. */
export interface TaskRow {
  task: Task
  what: string
  doer: 'resident' | 'technician'
  mark: Mark
  source?: string
  reason: string
}

/** Every table that the calculations take as a parameter. */
export interface Tables {
  /** Of the model: dates must be explainable later, so a new model gets a new number. */
  version: 1
  figures: Figures
  dustEvents: Record<DustEventKind, Figure>
  /** Factor for 0, 1, 2, 3 and 4 or more fur-bearing pets. */
  pets: readonly Figure[]
  media: readonly MediumRow[]
  /** Screens by where they sit. */
  screens: { ductless: MediumRow; ventilator: MediumRow }
  zones: readonly ZoneRow[]
  tasks: Record<Task, TaskRow>
  /** Smallest face first. */
  commonSizes: readonly NominalSize[]
}

export type FigureName =
  | 'annualSigmaF'
  | 'coldestDayOfYear'
  | 'leastSwingF'
  | 'flatClimateHdd65'
  | 'sigmaWithoutDegreeDaysF'
  | 'heatBaseBelowSetpointF'
  | 'coolBaseBelowSetpointF'
  | 'defaultHeatSetpointF'
  | 'defaultCoolSetpointF'
  | 'heatAdjustment'
  | 'heatOversize'
  | 'coolOversize'
  | 'leastDesignDifferenceF'
  | 'heatingBlowerFactor'
  | 'evenSpreadBelowHours'
  | 'scalingWindowDays'
  | 'leastScale'
  | 'greatestScale'
  | 'scalingHalfHours'
  | 'cfmPerTon'
  | 'temperatureRiseF'
  | 'airHeatFactor'
  | 'assumedAirflowCfm'
  | 'derateFromFt'
  | 'deratePer1000Ft'
  | 'pressureLapsePerFt'
  | 'pressureExponent'
  | 'cubicMetresPerCubicFoot'
  | 'btuPerTherm'
  | 'grilleVelocityFpm'
  | 'cabinetVelocityFpm'
  | 'dustMicrogramsPerM3'
  | 'peopleBase'
  | 'peopleEach'
  | 'smoking'
  | 'carpet'
  | 'lossPerHour'
  | 'referenceCleaning'
  | 'airChangesPerHour'
  | 'assumedMerv'
  | 'poolShares'
  | 'thetaSigma'
  | 'lightSpread'
  | 'clearBelow'
  | 'darkAbove'
  | 'leastLoadToLearn'
  | 'learnFromDays'
  | 'lookAfterDays'
  | 'heavyUseHours'
  | 'trailingDays'
  | 'noLookWithinDays'
  | 'lookWorthDays'
  | 'changeBeforeDays'
  | 'changeAfterDays'
  | 'seasonMeanDays'
  | 'seasonHours'
  | 'serviceOpensBeforeDays'
  | 'serviceClosesBeforeDays'
  | 'serviceAtLeastAfterDays'
  | 'lateServiceDays'
  | 'runtimeShareOfYear'
  | 'condensateHours'
  | 'condensateDays'
  | 'padHoursHardWater'
  | 'padWindowDays'
  | 'outdoorUnitDays'
  | 'hoodsDays'
  | 'coreDays'
  | 'waterHeaterDays'
  | 'alarmTestDays'
  | 'smokeAlarmYears'
  | 'coAlarmYears'
  | 'alarmWindowDays'
  | 'soonDays'
  | 'roundsOpenDays'
  | 'suppliesMonths'

export type Figures = Record<FigureName, Figure>
