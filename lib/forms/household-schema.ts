import { z } from 'zod'
import { type Climate, type Household, TENURES } from '@/lib/core/household'
import { deviceSchema, filterSchema, systemSchema } from './equipment-schema'
import { choice, day, field, id, keys, list, number, oneOf, shown, text, yesNo } from './fields'
import { dustEventSchema, readingSchema, recordSchema, weatherSpellSchema } from './log-schema'

const HDD65 = { min: 0, max: 20_000, unit: 'heating degree-days, °F' }
const CDD65 = { min: 0, max: 8000, unit: 'cooling degree-days, °F' }

const designTemperatures = {
  heatingDesignF: number({ min: -60, max: 65, unit: '°F' }),
  coolingDesignF: number({ min: 65, max: 125, unit: '°F' }),
}

function months(limits: typeof HDD65) {
  const must = 'must be a list of twelve numbers, January first'
  return z
    .array(number(limits), {
      error: (issue) =>
        issue.input === undefined ? `is missing; it ${must}` : `${must}, but is ${shown(issue.input)}`,
    })
    .length(12, { error: (issue) => `${must}, but has ${(issue.input as unknown[]).length}` })
}

export const climateSchema = z.discriminatedUnion(
  'kind',
  [
    keys({ kind: z.literal('annual'), hdd65: number(HDD65), cdd65: number(CDD65), ...designTemperatures }),
    keys({ kind: z.literal('monthly'), hdd65: months(HDD65), cdd65: months(CDD65), ...designTemperatures }),
  ],
  choice('kind', ['annual', 'monthly']),
) satisfies z.ZodType<Climate>

// Zones that were found to be real; asking the platform again costs a tenth of a millisecond each time.
const zones = new Set<string>()

/** Whether this is the name of a zone in the IANA database, `America/Chicago`; a bare offset is none. */
export function isTimeZone(name: string): boolean {
  if (zones.has(name)) return true
  if (!/^[A-Za-z][\w+/-]{0,60}$/.test(name)) return false
  try {
    new Intl.DateTimeFormat('en', { timeZone: name })
  } catch {
    return false
  }
  zones.add(name)
  return true
}

export const timeZone = field<string>(
  (value) => typeof value === 'string' && isTimeZone(value),
  'must be the name of a time zone such as America/Chicago or Europe/Berlin',
)

export const emergencyNumber = field<string>(
  (value) => typeof value === 'string' && /^[0-9+*#() -]{2,24}$/.test(value) && /\d.*\d/.test(value),
  'must be a telephone number such as 911 or 112',
)

export const householdSchema = keys({
  id: id(),
  name: text(200),
  building: text(200).optional(),
  tenure: oneOf(TENURES),
  since: day().optional(),
  timeZone,
  units: oneOf(['us', 'metric']),
  elevationFt: number({ min: -300, max: 12_000, unit: 'feet' }).optional(),
  emergencyNumber: emergencyNumber.optional(),
  climate: climateSchema,
  people: number({ min: 0, max: 30, whole: true, unit: 'people' }),
  pets: number({ min: 0, max: 30, whole: true, unit: 'pets with fur' }),
  petFactor: number({ min: 0.1, max: 10 }).optional(),
  smoking: yesNo(),
  carpet: yesNo(),
  hardWater: yesNo(),
  vulnerable: yesNo(),
  dustEvents: list(dustEventSchema, 'dusty times'),
  weather: list(weatherSpellSchema, 'hot and cold spells').unwrap().optional(),
  systems: list(systemSchema, 'systems'),
  filters: list(filterSchema, 'filters'),
  devices: list(deviceSchema, 'devices'),
  records: list(recordSchema, 'records'),
  readings: list(readingSchema, 'readings'),
}) satisfies z.ZodType<Household>

export const fileSchema = keys({
  plenum: field<1>((value) => value === 1, 'must be 1, the version of the household file that is read here'),
  households: z.array(householdSchema, {
    error: (issue) =>
      issue.input === undefined
        ? 'is missing; it must be a list of households in square brackets'
        : `must be a list of households in square brackets, but is ${shown(issue.input)}`,
  }),
})
