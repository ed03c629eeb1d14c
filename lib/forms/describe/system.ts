import type { Assumed, Fan, Household, System } from '@/lib/core/household'
import { M3H_PER_CFM } from '@/lib/core/unit-words'
import { LIMITS } from '../equipment-schema'
import { celsiusFrom, typedPower, typedTemperature } from '../quantities'
import { Answers, known, one, type Read, type Typed } from './answers'
import { COOL_WORDS, equipmentOf, equipmentWords, FUELS, HOW, systemName } from './equipment'

export type SystemRead = { system: Omit<System, 'id'>; assumed: Assumed['code'][] }

const YEAR = { min: 1900, max: 2099, unit: 'a year', whole: true }
const FANS = ['auto', 'on', 'circulate', 'unknown'] as const

/** One system. `before` is the one that stands: what its file says in a way the questions cannot is kept. */
export function readSystem(typed: Typed, units: Household['units'], before?: System): Read<SystemRead> {
  const answers = new Answers(typed)
  const name = answers.line('name', 200)
  const how = answers.choice('how', HOW, 'Choose how the heat reaches the rooms; “I don’t know” is an answer.')
  const fuel = answers.text('fuel') || 'unknown'
  const cool = answers.choice('cool', COOL_WORDS, 'Choose what cools; “nothing” and “I don’t know” are answers.')
  const found =
    how && cool ? equipmentOf({ how, fuel: FUELS.find((word) => word === fuel) ?? 'unknown', cool }) : undefined
  const kept = before && found ? keptIfSame(typed, before) : undefined
  const equipment = kept ?? (found && 'clash' in found ? answers.fault(found.field, found.clash) : found)

  const ratings = {
    inputBtuh: answers.maybe('input', typedPower(LIMITS.input, { btuh: 1, decimals: 0 })),
    outputBtuh: answers.maybe('output', typedPower(LIMITS.output, { btuh: 1, decimals: 0 })),
    efficiencyPercent: answers.quantity('efficiency', { min: 30, max: 120, unit: 'percent' }),
    riseF: readRise(answers, units),
    heatYear: answers.quantity('heat-year', YEAR),
    tons: answers.maybe('tons', typedPower(LIMITS.tons, { btuh: 12_000, decimals: 2 })),
    coolYear: answers.quantity('cool-year', YEAR),
  }
  const airflow = {
    heat: readAirflow(answers, 'airflow-heat', units),
    cool: readAirflow(answers, 'airflow-cool', units),
  }
  const thermostat = readThermostat(answers, units)
  const fan = readFan(answers)

  return answers.result(() => {
    const { delivery, heat, cool, assumed } = known(equipment)
    const isPump = heat === 'heat-pump'
    const system: Omit<System, 'id'> = {
      name: name || systemName({ heat, cool, delivery }),
      delivery,
      ...(heat && {
        heat: {
          source: heat,
          ...given('inputBtuh', ratings.inputBtuh),
          ...given('outputBtuh', ratings.outputBtuh),
          ...given(
            'efficiency',
            isPump || ratings.efficiencyPercent === undefined ? undefined : ratings.efficiencyPercent / 100,
          ),
          ...given('riseF', ratings.riseF),
          ...given('installed', ratings.heatYear),
        },
      }),
      ...(cool && { cool: { source: cool, ...given('tons', ratings.tons), ...given('installed', ratings.coolYear) } }),
      ...(fan && fan !== 'unknown' && { fan }),
      ...given('thermostat', thermostat),
      ...((airflow.heat !== undefined || airflow.cool !== undefined) && {
        airflowCfm: { ...given('heat', airflow.heat), ...given('cool', airflow.cool) },
      }),
      // Told by other systems, never typed.
      ...given('dustStart', before?.dustStart),
    }
    const blows = delivery === 'ducted' && (heat !== undefined || cool !== undefined)
    return { system, assumed: [...assumed, ...(fan === 'unknown' && blows ? ['fan' as const] : [])] }
  })
}

function given<K extends string, V>(key: K, value: V | undefined): { [P in K]?: V } {
  return value === undefined ? {} : ({ [key]: value } as { [P in K]?: V })
}

/** Where the three questions still say what the system's own equipment says, that equipment stays as it is. */
function keptIfSame(typed: Typed, before: System) {
  const was = equipmentWords(before, [])
  const is = new Answers(typed)
  const same = is.text('how') === was.how && is.text('cool') === was.cool && (is.text('fuel') || 'unknown') === was.fuel
  return same
    ? { delivery: before.delivery, heat: before.heat?.source, cool: before.cool?.source, assumed: [] }
    : undefined
}

// A difference of temperatures has no zero to shift.
function readRise(answers: Answers, units: Household['units']): number | undefined {
  if (units === 'us') return answers.quantity('rise', LIMITS.rise)
  const rise = answers.quantity('rise', { min: 3, max: 111, unit: '°C' })
  return rise === undefined ? undefined : rise * 1.8
}

function readAirflow(answers: Answers, field: string, units: Household['units']): number | undefined {
  const { min, max, unit } = LIMITS.airflow
  if (units === 'us') return answers.quantity(field, { min, max, unit })
  const limits = { min: Math.ceil(min * M3H_PER_CFM), max: Math.floor(max * M3H_PER_CFM) }
  const flow = answers.quantity(field, { ...limits, unit: 'cubic metres an hour' })
  return flow === undefined ? undefined : rounded(flow / M3H_PER_CFM)
}

function readThermostat(answers: Answers, units: Household['units']): System['thermostat'] | undefined {
  const schema = typedTemperature({
    minF: LIMITS.setpoint.min,
    maxF: LIMITS.setpoint.max,
    unit: units === 'us' ? 'F' : 'C',
  })
  const [heat, cool] = [answers.maybe('heat-set', schema), answers.maybe('cool-set', schema)]
  const isBlank = (field: string) => answers.text(field) === ''
  if (isBlank('heat-set') && isBlank('cool-set')) return undefined
  for (const [blank, other] of [
    ['heat-set', 'cool-set'],
    ['cool-set', 'heat-set'],
  ] as const) {
    if (isBlank(blank) && !isBlank(other))
      answers.fault(blank, 'Write both temperatures, or leave both empty if you don’t know them.')
  }
  if (heat === undefined || cool === undefined) return undefined
  return { heatSetpointF: rounded(heat), coolSetpointF: rounded(cool) }
}

function rounded(value: number): number {
  return Math.round(value * 100) / 100
}

function readFan(answers: Answers): Fan | 'unknown' | undefined {
  if (answers.text('fan') === '') return 'unknown'
  const mode = answers.choice('fan', FANS, 'Choose how the fan is set; “I don’t know” is an answer.')
  if (mode !== 'circulate') return mode === undefined || mode === 'unknown' ? mode : { mode }
  if (answers.text('minutes') === '')
    return answers.fault('minutes', 'Write for how many minutes of every hour the fan runs.')
  const minutesPerHour = answers.quantity('minutes', LIMITS.minutesPerHour)
  return minutesPerHour === undefined ? undefined : { mode, minutesPerHour }
}

/** The fields as a system fills them. */
export function systemTyped(system: System, home: Household): Typed {
  const { heat, cool, fan, thermostat, airflowCfm } = system
  const assumed = (home.assumed ?? []).filter(({ subject }) => subject === system.id).map(({ code }) => code)
  const words = equipmentWords(system, assumed)
  const degrees = (f: number) => (home.units === 'us' ? f : Math.round(celsiusFrom(f) * 10) / 10)
  const flow = (cfm?: number) => (cfm === undefined || home.units === 'us' ? cfm : Math.round(cfm * M3H_PER_CFM))
  return {
    name: [system.name],
    how: [words.how],
    fuel: [words.fuel],
    cool: [words.cool],
    input: one(heat?.inputBtuh),
    output: one(heat?.outputBtuh),
    efficiency: one(heat?.efficiency === undefined ? undefined : Math.round(heat.efficiency * 1000) / 10),
    rise: one(
      heat?.riseF === undefined || home.units === 'us' ? heat?.riseF : Math.round((heat.riseF / 1.8) * 10) / 10,
    ),
    'heat-year': one(heat?.installed),
    tons: one(cool?.tons),
    'cool-year': one(cool?.installed),
    fan: [fan ? fan.mode : 'unknown'],
    minutes: fan?.mode === 'circulate' ? [String(fan.minutesPerHour)] : [],
    'heat-set': one(thermostat && degrees(thermostat.heatSetpointF)),
    'cool-set': one(thermostat && degrees(thermostat.coolSetpointF)),
    'airflow-heat': one(flow(airflowCfm?.heat)),
    'airflow-cool': one(flow(airflowCfm?.cool)),
  }
}

/** What was left as the page showed it keeps its exact value: °C, m³/h and per cent are shown rounded, and must not drift. */
export function keptAsShown<S extends Omit<System, 'id'>>(read: S, before: System, typed: Typed, home: Household): S {
  const shown = systemTyped(before, home)
  const isSame = (field: string) => shown[field]?.[0] !== undefined && typed[field]?.[0] === shown[field]?.[0]
  const { thermostat, heat, airflowCfm } = read
  const flow = (kind: 'heat' | 'cool') =>
    given(kind, isSame(`airflow-${kind}`) ? before.airflowCfm?.[kind] : airflowCfm?.[kind])
  const was = before.thermostat
  return {
    ...read,
    ...(thermostat &&
      was && {
        thermostat: {
          heatSetpointF: isSame('heat-set') ? was.heatSetpointF : thermostat.heatSetpointF,
          coolSetpointF: isSame('cool-set') ? was.coolSetpointF : thermostat.coolSetpointF,
        },
      }),
    ...(airflowCfm && { airflowCfm: { ...flow('heat'), ...flow('cool') } }),
    ...(heat && {
      heat: {
        ...heat,
        ...(heat.riseF !== undefined && isSame('rise') && { riseF: before.heat?.riseF }),
        ...(heat.efficiency !== undefined && isSame('efficiency') && { efficiency: before.heat?.efficiency }),
      },
    }),
  }
}
