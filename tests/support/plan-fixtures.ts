import { addDays, daysBetween } from '@/lib/core/day'
import type { Household } from '@/lib/core/household'
import type { Effect, Item, SystemYear, Warning, Workings } from '@/lib/core/plan-types'

/** An invented home and figures of plausible size, for drawing: nothing here was computed by the model. */
export const ON = '2026-11-25'

export const wrenfield: Household = {
  id: 'wrenfield',
  name: 'Wrenfield Road',
  tenure: 'own',
  since: '2026-09-01',
  timeZone: 'America/Chicago',
  units: 'us',
  climate: { kind: 'annual', hdd65: 6200, cdd65: 850, heatingDesignF: 2, coolingDesignF: 88 },
  people: 3,
  pets: 2,
  smoking: false,
  carpet: true,
  hardWater: false,
  vulnerable: false,
  dustEvents: [],
  systems: [
    {
      id: 'main',
      name: 'Main system',
      delivery: 'ducted',
      heat: { source: 'gas-furnace', inputBtuh: 80000, efficiency: 0.8 },
      cool: { source: 'central-ac', tons: 3 },
    },
  ],
  filters: [
    {
      id: 'hall',
      system: 'main',
      place: 'wall-grille',
      nominal: { widthIn: 16, heightIn: 25, depthIn: 1 },
      medium: 'pleated',
      merv: 8,
    },
  ],
  devices: [{ id: 'co1', kind: 'co-alarm', endOfLife: '2026-11-01' }],
  records: [{ on: '2026-09-12', kind: 'filter-changed', filter: 'hall' }],
  readings: [],
}

export const items: Item[] = [
  {
    task: 'alarm-replace',
    subject: 'co1',
    doer: 'resident',
    earliest: '2026-08-03',
    due: '2026-11-01',
    latest: '2026-11-01',
    basis: 'age',
    state: 'overdue',
    reasons: [
      {
        say: 'Its end of life, printed on the back, was 1 November. After that day it may stay silent.',
        mark: 'P',
      },
    ],
  },
  {
    task: 'heating-service',
    subject: 'main',
    doer: 'technician',
    earliest: '2026-11-01',
    due: '2026-11-25',
    latest: '2026-12-01',
    basis: 'never-recorded',
    state: 'due',
    reasons: [{ say: 'No heating service is recorded, and the heating season has begun.', mark: 'P' }],
  },
  {
    task: 'change-filter',
    subject: 'hall',
    doer: 'resident',
    earliest: '2026-11-07',
    due: '2026-11-28',
    latest: '2026-12-05',
    lookOn: '2026-11-27',
    early: '2026-11-02',
    late: '2026-12-11',
    basis: 'loading',
    state: 'soon',
    reasons: [
      { say: 'By then the blower will have run about 300 hours since 12 September.', mark: 'P' },
      { say: 'The two pets bring it forward by 23 days.', mark: 'P' },
    ],
  },
  {
    task: 'cooling-service',
    subject: 'main',
    doer: 'technician',
    earliest: '2027-03-20',
    due: '2027-05-20',
    latest: '2027-05-20',
    basis: 'season',
    state: 'later',
    reasons: [{ say: 'Before the first warm weeks, when technicians still have time.', mark: 'P' }],
  },
]

export const warnings: Warning[] = [
  {
    code: 'filter-small-for-airflow',
    subject: 'hall',
    say: 'The wall grille filter is small for this blower: air passes it at 432 feet a minute, and 300 is the usual limit for a grille. A 20 × 30 would bring it under.',
  },
]

export const workings: Workings = {
  filter: 'hall',
  heatHours: 1040,
  coolHours: 395,
  fanHours: 1508,
  airflowCfm: 1200,
  faceVelocityFpm: 432,
  dustMicrogramsPerM3: 109,
  arrestance: 0.85,
  capacityGrams: 36.1,
  pressureDropCleanInWg: 0.25,
  loadedFraction: 0.94,
  theta: { q10: 0.55, q50: 1, q90: 1.8 },
}

export const effects: Effect[] = [
  { fact: 'the two pets', instead: 'no pets', dueWithout: '2026-12-21', days: -23, mark: 'P' },
  { fact: 'the carpet', instead: 'bare floors', dueWithout: '2026-12-06', days: -8, mark: 'C' },
  { fact: 'the third person', instead: 'two people', dueWithout: '2026-12-07', days: -9, mark: 'C' },
  { fact: 'MERV 8', instead: 'MERV 13', dueWithout: '2026-11-23', days: 5, mark: 'P' },
]

/** A bell over the year, in hours a day: peak on `peak`, in days from `from`. */
function bell(peak: number, wide: number, top: number): number[] {
  return Array.from({ length: 365 }, (_, day) => {
    const away = Math.min(Math.abs(day - peak), 365 - Math.abs(day - peak))
    return Math.max(0, top * Math.exp(-((away / wide) ** 2)) - 0.05)
  })
}

const FROM = '2026-09-01'

/** The year of the invented home. */
export const year: SystemYear = {
  system: 'main',
  name: 'Main system',
  from: FROM,
  heatHours: bell(daysBetween(FROM, '2027-01-21'), 78, 7.1),
  coolHours: bell(daysBetween(FROM, '2027-07-24'), 52, 5.2),
  filters: [
    {
      filter: 'hall',
      events: [
        { on: '2026-09-12', kind: 'changed', task: 'change-filter' },
        { on: '2026-10-20', kind: 'looked', task: 'look-at-filter' },
        ...['2026-11-28', '2027-01-02', '2027-02-03', '2027-03-11', '2027-04-30', '2027-07-02', '2027-08-03'].map(
          (on) => ({ on, kind: 'forecast' as const, task: 'change-filter' as const }),
        ),
      ],
    },
  ],
  windows: [
    {
      task: 'heating-service',
      subject: 'main',
      doer: 'technician',
      earliest: '2026-11-01',
      due: '2026-11-25',
      latest: '2026-12-01',
    },
    {
      task: 'cooling-service',
      subject: 'main',
      doer: 'technician',
      earliest: '2027-03-20',
      due: '2027-05-20',
      latest: '2027-05-20',
    },
    {
      task: 'heating-service',
      subject: 'main',
      doer: 'technician',
      earliest: '2027-06-25',
      due: '2027-08-25',
      latest: '2027-08-25',
    },
  ],
}

/** Two grilles and monthly looks: the most crowded year that a home is likely to bring. */
export const crowdedYear: SystemYear = {
  ...year,
  name: 'Upstairs',
  filters: ['hall', 'den', 'loft'].map((filter, index) => ({
    filter,
    events: Array.from({ length: 12 }, (_, month) => ({
      on: addDays(FROM, month * 30 + index * 4),
      kind: month < 3 ? ('changed' as const) : ('forecast' as const),
      task: 'wash-filter' as const,
    })),
  })),
  windows: [
    ...year.windows,
    ...Array.from({ length: 5 }, (_, index) => ({
      task: 'condensate-look' as const,
      subject: 'main',
      doer: 'resident' as const,
      earliest: addDays('2027-05-10', index * 25),
      due: addDays('2027-05-20', index * 25),
      latest: addDays('2027-05-24', index * 25),
    })),
  ],
}
