import type { Mark, MediumRow } from '@/lib/core/tables'

const MONTHS_90 = {
  calendarLimitDays: 90,
  calendarMark: 'G' as Mark,
  calendarReason: 'A pleated filter should not stay longer than three months, however little it caught.',
  calendarSource: 'US EPA and DOE, ENERGY STAR maintenance guidance',
}
const NO_DEPTH_LIMIT = Number.POSITIVE_INFINITY

function loading(
  arrestance: number,
  capacityGramsPerFt2: number,
  pressureDropAt300InWg: number,
  pressureExponent: number,
) {
  return { arrestance, capacityGramsPerFt2, pressureDropAt300InWg, pressureExponent, mark: 'P' as Mark }
}

// Arrestance and clean resistance by rating; deeper filters resist as their depth says.
const RATINGS = [
  { fromMerv: 13, name: 'MERV 13 or more', arrestance: 0.97, dropAt1In: 0.28 },
  { fromMerv: 11, name: 'MERV 11 or 12', arrestance: 0.93, dropAt1In: 0.2 },
  { fromMerv: 0, name: 'MERV 10 or less', arrestance: 0.85, dropAt1In: 0.15 },
]

const PLEATED_AND_MEDIA: MediumRow[] = RATINGS.flatMap(({ fromMerv, name, arrestance, dropAt1In }) => [
  {
    name: `pleated, 1 inch, ${name}`,
    media: ['pleated', 'media'],
    belowDepthIn: 1.5,
    fromMerv,
    loading: loading(arrestance, 13, dropAt1In, 1.4),
    ...MONTHS_90,
  },
  {
    name: `pleated, 2 inches, ${name}`,
    media: ['pleated', 'media'],
    belowDepthIn: 3.5,
    fromMerv,
    loading: loading(arrestance, 30, 0.11, 1.3),
    ...MONTHS_90,
  },
  {
    name: `extended media, 4 inches, ${name}`,
    media: ['pleated', 'media'],
    belowDepthIn: 4.5,
    fromMerv,
    loading: loading(arrestance, 65, 0.12, 1.2),
    calendarLimitDays: 180,
    calendarMark: 'P',
    calendarReason: 'A 4-inch media filter should not stay longer than half a year.',
  },
  {
    name: `extended media, 5 inches, ${name}`,
    media: ['pleated', 'media'],
    belowDepthIn: NO_DEPTH_LIMIT,
    fromMerv,
    loading: loading(arrestance, 90, 0.12, 1.2),
    calendarLimitDays: 365,
    calendarMark: 'P',
    calendarReason: 'A 5-inch media filter should not stay longer than a year.',
  },
])

/** What each medium catches, holds and resists; values of common practice where not marked otherwise. The first row that serves the medium, rating and depth holds: highest rating first, thinnest depth first. */
export const media: readonly MediumRow[] = [
  {
    name: 'fiberglass panel',
    media: ['fiberglass'],
    belowDepthIn: NO_DEPTH_LIMIT,
    fromMerv: 0,
    loading: loading(0.6, 8, 0.05, 1.3),
    calendarLimitDays: 30,
    calendarMark: 'P',
    calendarReason: 'A fiberglass panel should not stay longer than a month.',
  },
  ...PLEATED_AND_MEDIA,
  {
    name: 'washable electrostatic',
    media: ['washable'],
    belowDepthIn: NO_DEPTH_LIMIT,
    fromMerv: 0,
    loading: loading(0.7, 12, 0.22, 1.4),
    calendarLimitDays: 30,
    calendarMark: 'P',
    calendarReason: 'A washable filter is washed every month.',
  },
]

/** Screens catch only lint and have no loading model: they are washed by the calendar, as where they sit asks. */
export const screens = {
  ductless: {
    name: 'ductless head screen',
    media: ['screen'],
    belowDepthIn: NO_DEPTH_LIMIT,
    fromMerv: 0,
    loading: null,
    calendarLimitDays: 30,
    calendarMark: 'C',
    calendarReason: 'A ductless head’s screen is washed every month; sources say two weeks, one month or three.',
  },
  ventilator: {
    name: 'ventilator screen',
    media: ['screen'],
    belowDepthIn: NO_DEPTH_LIMIT,
    fromMerv: 0,
    loading: null,
    calendarLimitDays: 60,
    calendarMark: 'G',
    calendarReason: 'A ventilator’s screens are washed every two months.',
    calendarSource: 'government guidance on heat-recovery ventilators',
  },
} as const satisfies Record<string, MediumRow>
