import { addYears, type Day } from '@/lib/core/day'
import { DEVICE_KINDS, type Device, type DeviceKind, type Household } from '@/lib/core/household'
import { deviceInWords } from '@/lib/core/subject-words'
import { typedMeantDay } from '../quantities'
import { Answers, freshId, one, type Read, type Typed } from './answers'

export const ALARM_KINDS = ['smoke-alarm', 'co-alarm'] as const
/** Devices that are there or not; alarms have dates of their own and stand in rows. */
export const TICKED_KINDS = DEVICE_KINDS.filter((kind) => !ALARM_KINDS.some((alarm) => alarm === kind))
export const MOST_ALARMS = 30

// No alarm lasts so long: who types a later end of life has slipped, and would not be told to replace it.
const LONGEST_LIFE_YEARS = 20

/** What ticks and rows say of the devices; `on` is today. `before` are those that stand: they keep their ids. */
export function readDevices(typed: Typed, on: Day, before: readonly Device[] = []): Read<Device[]> {
  const latestEnd = addYears(on, LONGEST_LIFE_YEARS)
  const answers = new Answers(typed)
  const ticks = answers.all('device')
  const devices: Device[] = before.filter(({ id, kind }) => !isAlarm(kind) && ticks.includes(`id:${id}`))
  const taken = new Set(before.map(({ id }) => id))
  for (const kind of TICKED_KINDS) {
    if (ticks.includes(`new:${kind}`)) devices.push({ id: fresh(kind, taken), kind })
  }
  for (let row = 0; row < MOST_ALARMS; row++) {
    const kind = answers.text(`alarm-${row}`)
    if (kind === '' || kind === 'none') continue
    const alarm = ALARM_KINDS.find((word) => word === kind)
    if (!alarm) {
      answers.fault(`alarm-${row}`, 'Choose which alarm it is, or “none”.')
      continue
    }
    const made = answers.maybe(`alarm-${row}-made`, typedMeantDay)
    const endOfLife = answers.maybe(`alarm-${row}-end`, typedMeantDay)
    if (made && made > on)
      answers.fault(`alarm-${row}-made`, `Look at the year: it cannot have been made after today (${on}).`)
    if (endOfLife && endOfLife > latestEnd)
      answers.fault(
        `alarm-${row}-end`,
        `Look at the year: this is more than ${LONGEST_LIFE_YEARS} years from now. An alarm’s end of life lies nearer.`,
      )
    if (made && endOfLife && endOfLife < made)
      answers.fault(`alarm-${row}-end`, `Its end of life cannot lie before the day it was made (${made}).`)
    const old = before.find(({ id }) => id === answers.all(`alarm-${row}-id`)[0])
    devices.push({
      id: old && isAlarm(old.kind) && !devices.some(({ id }) => id === old.id) ? old.id : fresh(alarm, taken),
      kind: alarm,
      ...(old?.system && { system: old.system }),
      ...(made && { made }),
      ...(endOfLife && { endOfLife }),
    })
  }
  return answers.result(() => inOrder(devices, before))
}

/** Those that stood keep their order, new ones come after. */
function inOrder(devices: Device[], before: readonly Device[]): Device[] {
  const stood = before.flatMap(({ id }) => devices.filter((one) => one.id === id))
  return [...stood, ...devices.filter((one) => !stood.includes(one))]
}

function fresh(kind: DeviceKind, taken: Set<string>): string {
  const id = freshId(kind, taken, kind)
  taken.add(id)
  return id
}

function isAlarm(kind: DeviceKind): boolean {
  return kind === 'smoke-alarm' || kind === 'co-alarm'
}

/** The fields as the devices fill them. */
export function devicesTyped({ devices }: Pick<Household, 'devices'>): Typed {
  const alarms = devices.filter(({ kind }) => isAlarm(kind))
  return {
    device: devices.filter(({ kind }) => !isAlarm(kind)).map(({ id }) => `id:${id}`),
    ...Object.fromEntries(
      alarms.flatMap(({ id, kind, made, endOfLife }, row) => [
        [`alarm-${row}`, [kind]],
        [`alarm-${row}-id`, [id]],
        [`alarm-${row}-made`, one(made)],
        [`alarm-${row}-end`, one(endOfLife)],
      ]),
    ),
  }
}

/** How many alarm rows were typed, so that a form shows them all. */
export function alarmRows(typed: Typed): number {
  const rows = Object.keys(typed).flatMap((field) => {
    const row = /^alarm-(\d{1,2})$/.exec(field)?.[1]
    return row === undefined || (typed[field]?.[0] ?? 'none') === 'none' ? [] : [Number(row) + 1]
  })
  return Math.min(MOST_ALARMS, Math.max(0, ...rows))
}

/** Every device that can be ticked: those that stand by their own ids, and one of each kind that does not. */
export function tickable(devices: readonly Device[]): { value: string; kind: DeviceKind; label: string }[] {
  const standing = devices.filter(({ kind }) => !isAlarm(kind))
  const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)
  return TICKED_KINDS.flatMap((kind) => {
    const those = standing.filter((device) => device.kind === kind)
    if (those.length === 0) return [{ value: `new:${kind}`, kind, label: capital(deviceInWords(kind)) }]
    return those.map(({ id }) => ({
      value: `id:${id}`,
      kind,
      label: those.length > 1 ? `${capital(deviceInWords(kind))}, “${id}”` : capital(deviceInWords(kind)),
    }))
  })
}
