import { z } from 'zod'
import { DOERS, MEDIA, TASKS } from '@/lib/core/household'
import { BASES, type Plan, STATES } from '@/lib/core/plan-types'
import { MARKS } from '@/lib/core/tables'

// The shape of what goes out to programs: tests read every answer with it, and the description is made from it.

const day = z.iso.date().describe('A calendar day in the home’s own time zone.')
const fileId = z.string().min(1)
const task = z.enum(TASKS).describe('What is to be done.')
const doer = z.enum(DOERS).describe('Who may do it. Gas, electrical and refrigerant work is always the technician’s.')
const hours = z.number().min(0).describe('Hours of the mean year, after scaling by measured hours.')

const reason = z.strictObject({
  say: z.string(),
  mark: z
    .enum(MARKS)
    .describe(
      'How sure it is. S: published standard. G: government or agency guidance. D: open data. P: common practice, no source. C: our own choice. ?: from memory of the source.',
    ),
  source: z.string().optional(),
})

const item = z
  .strictObject({
    task,
    subject: z.string().describe('A filter, system or device of the household, by its id.'),
    doer,
    earliest: day.describe('The window for doing it opens.'),
    due: day,
    latest: day.describe('The window closes.'),
    lookOn: day.optional().describe('Filters: when to hold it to a lamp.'),
    early: day.nullable().optional().describe('Filters: the day if this home is dustier than the estimate.'),
    late: day.nullable().optional().describe('Filters: the day if it is cleaner. Null without a loading model.'),
    basis: z.enum(BASES).describe('What the day comes from.'),
    state: z
      .enum(STATES)
      .describe(
        'overdue: latest is past. due: due is here or past, latest is not. soon: due within 14 days. later: after that.',
      ),
    reasons: z.array(reason),
  })
  .meta({ id: 'Item' })

const theta = z
  .strictObject({ q10: z.number(), q50: z.number(), q90: z.number() })
  .describe('Quantiles of the system’s own dust factor; 1 before anything was seen.')

const workings = z
  .strictObject({
    filter: z.string(),
    heatHours: hours,
    coolHours: hours,
    fanHours: hours.describe('Every hour the blower runs in the mean year.'),
    airflowCfm: z
      .number()
      .nullable()
      .describe('This filter’s share of the larger of heating and cooling airflow, cubic feet a minute.'),
    faceVelocityFpm: z.number().nullable().describe('Feet a minute.'),
    dustMicrogramsPerM3: z.number().describe('With the household’s factors, without events and cleaning.'),
    arrestance: z.number().nullable().describe('Share of the dust that the filter keeps.'),
    capacityGrams: z.number().nullable().describe('What it holds when it is full.'),
    pressureDropCleanInWg: z.number().nullable().describe('Inches of water, clean.'),
    loadedFraction: z.number().nullable().describe('How full it is today: 1 is full.'),
    theta: theta.nullable(),
  })
  .describe('The figures behind one filter’s day; null where it has no loading model.')
  .meta({ id: 'Workings' })

const household = z
  .strictObject({
    id: fileId.describe('The id of the household file.'),
    items: z.array(item).describe('By due day.'),
    workings: z.array(workings),
    warnings: z.array(z.strictObject({ code: z.string(), subject: z.string(), say: z.string() })),
  })
  .meta({ id: 'HouseholdPlan' })

const supply = z
  .strictObject({
    size: z
      .string()
      .regex(/^[\d.]+x[\d.]+x[\d.]+$/)
      .describe('Nominal inches.'),
    medium: z.enum(MEDIA),
    merv: z.number().nullable(),
    count: z.int().min(1),
  })
  .meta({ id: 'Supply' })

const round = z
  .strictObject({
    building: z.string(),
    doer,
    on: day,
    items: z.array(z.strictObject({ household: z.string(), task, subject: z.string() })),
  })
  .describe('One visit: what may be done in a building on one day.')
  .meta({ id: 'Round' })

/** A plan as programs get it, and nothing besides. */
export const planSchema = z
  .strictObject({
    on: day.describe('Today; with homes in several time zones, today in the first one’s.'),
    households: z.array(household),
    supplies: z.array(supply).describe('Filters to buy in the next 12 months.'),
    rounds: z.array(round).describe('Visits for what opens within 60 days.'),
  })
  .meta({ id: 'Plan' }) satisfies z.ZodType<Plan>
