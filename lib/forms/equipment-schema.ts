import { z } from 'zod'
import {
  COOL_SOURCES,
  DELIVERIES,
  DEVICE_KINDS,
  type Device,
  type Fan,
  FILTER_PLACES,
  type Filter,
  HEAT_SOURCES,
  MEDIA,
  type NominalSize,
  type System,
} from '@/lib/core/household'
import { choice, day, id, keys, number, oneOf, text, year } from './fields'

/** Limits of doors.md; where it names none, no wider than what is sold for homes has ever been. */
export const LIMITS = {
  side: { min: 4, max: 40, unit: 'inches' },
  depth: { min: 0.5, max: 6, unit: 'inches' },
  tons: { min: 0.5, max: 10, unit: 'tons of cooling' },
  input: { min: 10_000, max: 400_000, unit: 'Btu/h' },
  // The lowest and the highest input times the lowest and the highest efficiency; one ductless head gives less.
  output: { min: 1000, max: 480_000, unit: 'Btu/h' },
  efficiency: { min: 0.3, max: 1.2, unit: '0.8 is 80 %' },
  rise: { min: 5, max: 200, unit: '°F' },
  setpoint: { min: 40, max: 90, unit: '°F' },
  airflow: { min: 1, max: 20_000, unit: 'cubic feet a minute' },
  minutesPerHour: { min: 1, max: 60, unit: 'minutes' },
  // The test standard's scale ends at 16, but labels of denser filters say 17 to 20, and a person copies the label.
  merv: { min: 1, max: 20, whole: true, unit: 'MERV' },
  // The grid on which θ is learnt reaches from e⁻² to e².
  dustMedian: { min: 0.14, max: 7.3, unit: 'times the dust that is reckoned' },
  dustSpread: { min: 0.05, max: 0.5, unit: 'of the logarithm' },
  dustSystems: { min: 1, max: 1_000_000, whole: true, unit: 'systems' },
  labelLimitDays: { min: 1, max: 3650, whole: true, unit: 'days' },
} as const

export const merv = number(LIMITS.merv)

export const nominalSchema = keys({
  widthIn: number(LIMITS.side),
  heightIn: number(LIMITS.side),
  depthIn: number(LIMITS.depth),
}) satisfies z.ZodType<NominalSize>

export const fanSchema = z.discriminatedUnion(
  'mode',
  [
    keys({ mode: z.literal('auto') }),
    keys({ mode: z.literal('on') }),
    keys({ mode: z.literal('circulate'), minutesPerHour: number(LIMITS.minutesPerHour) }),
  ],
  choice('mode', ['auto', 'on', 'circulate']),
) satisfies z.ZodType<Fan>

export const systemSchema = keys({
  id: id(),
  name: text(200),
  delivery: oneOf(DELIVERIES),
  heat: keys({
    source: oneOf(HEAT_SOURCES),
    inputBtuh: number(LIMITS.input).optional(),
    outputBtuh: number(LIMITS.output).optional(),
    efficiency: number(LIMITS.efficiency).optional(),
    riseF: number(LIMITS.rise).optional(),
    installed: year().optional(),
  }).optional(),
  cool: keys({
    source: oneOf(COOL_SOURCES),
    tons: number(LIMITS.tons).optional(),
    installed: year().optional(),
  }).optional(),
  fan: fanSchema.optional(),
  thermostat: keys({ heatSetpointF: number(LIMITS.setpoint), coolSetpointF: number(LIMITS.setpoint) }).optional(),
  airflowCfm: keys({ heat: number(LIMITS.airflow).optional(), cool: number(LIMITS.airflow).optional() }).optional(),
  dustStart: keys({
    median: number(LIMITS.dustMedian),
    spread: number(LIMITS.dustSpread),
    systems: number(LIMITS.dustSystems),
  }).optional(),
}) satisfies z.ZodType<System>

export const filterSchema = keys({
  id: id(),
  system: id(),
  place: oneOf(FILTER_PLACES),
  nominal: nominalSchema,
  medium: oneOf(MEDIA),
  merv: merv.optional(),
  labelLimitDays: number(LIMITS.labelLimitDays).optional(),
}) satisfies z.ZodType<Filter>

export const deviceSchema = keys({
  id: id(),
  kind: oneOf(DEVICE_KINDS),
  system: id().optional(),
  made: day().optional(),
  endOfLife: day().optional(),
}) satisfies z.ZodType<Device>
