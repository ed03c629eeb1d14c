import { z } from 'zod'
import {
  DOERS,
  DUST_EVENT_KINDS,
  type DustEvent,
  LIGHTS,
  type LogRecord,
  MEDIA,
  READING_SOURCES,
  type Reading,
  TASKS,
  WEATHER_KINDS,
  type WeatherSpell,
} from '@/lib/core/household'
import { merv } from './equipment-schema'
import { choice, day, id, keys, number, oneOf } from './fields'

// Whether the span has so many hours is a rule across keys; this only says that hours are never below none.
const hours = number({ min: 0, max: 1_000_000, unit: 'hours' })
const therms = number({ min: 0, max: 1_000_000, unit: 'therms' })

export const dustEventSchema = keys({
  kind: oneOf(DUST_EVENT_KINDS),
  from: day(),
  to: day(),
}) satisfies z.ZodType<DustEvent>

const degreesF = number({ min: -80, max: 140, unit: '°F' })

export const weatherSpellSchema = keys({
  kind: oneOf(WEATHER_KINDS),
  from: day(),
  to: day(),
  highF: degreesF,
  lowF: degreesF,
}) satisfies z.ZodType<WeatherSpell>

export const recordSchema = z.discriminatedUnion(
  'kind',
  [
    keys({
      on: day(),
      kind: z.literal('filter-changed'),
      filter: id(),
      light: oneOf(LIGHTS).optional(),
      fitted: keys({ medium: oneOf(MEDIA), merv: merv.optional() }).optional(),
    }),
    keys({ on: day(), kind: z.literal('filter-looked'), filter: id(), light: oneOf(LIGHTS).optional() }),
    keys({
      on: day(),
      kind: z.literal('service-done'),
      task: oneOf(TASKS),
      subject: id(),
      by: oneOf(DOERS).optional(),
    }),
  ],
  choice('kind', ['filter-changed', 'filter-looked', 'service-done']),
) satisfies z.ZodType<LogRecord>

export const readingSchema = z.discriminatedUnion(
  'source',
  [
    keys({
      system: id(),
      from: day(),
      to: day(),
      source: z.enum(['thermostat', 'hour-meter']),
      heatHours: hours.optional(),
      coolHours: hours.optional(),
      fanHours: hours.optional(),
    }),
    keys({ system: id(), from: day(), to: day(), source: z.literal('bill'), therms, baseTherms: therms }),
  ],
  choice('source', READING_SOURCES),
) satisfies z.ZodType<Reading>
