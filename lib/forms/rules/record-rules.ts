import type { Day } from '@/lib/core/day'
import type { Device, DeviceKind, DustEvent, Household, LogRecord, Task, WeatherSpell } from '@/lib/core/household'
import type { Loose, Path } from '../fault'
import { type Known, type Report, refer } from './household-rules'

export interface Setting {
  known: Known
  /** Today where the household is; unknown where its zone could not be read. */
  day: Day | undefined
  report: Report
}

/** A span must not end before it begins. */
export function spanRule(span: { from?: Day; to?: Day }, path: Path, report: Report): boolean {
  if (!span.from || !span.to || span.from <= span.to) return true
  report([...path, 'to'], `is ${span.to}, before its beginning ${span.from}`)
  return false
}

export function notLater(on: Day | undefined, path: Path, { day, report }: Setting): void {
  if (on && day && on > day) report(path, `is ${on}, but today is ${day}: only what has happened can be recorded`)
}

/** A dusty time may lie ahead, a renovation that is planned for instance. */
export function dustEventRules(events: Loose<Household>['dustEvents'], report: Report): void {
  events?.forEach((event: Loose<DustEvent> | undefined, index) => {
    if (event) spanRule(event, ['dustEvents', index], report)
  })
}

/** A hot or cold spell, past or forecast: its night is not warmer than its day. */
export function weatherRules(spells: Loose<Household>['weather'], report: Report): void {
  spells?.forEach((spell: Loose<WeatherSpell> | undefined, index) => {
    if (!spell) return
    spanRule(spell, ['weather', index], report)
    if (spell.highF !== undefined && spell.lowF !== undefined && spell.lowF > spell.highF)
      report(['weather', index, 'lowF'], `is ${spell.lowF}, above the high of ${spell.highF}`)
  })
}

export function recordRules(records: readonly (Loose<LogRecord> | undefined)[] | undefined, setting: Setting): void {
  records?.forEach((record, index) => {
    if (!record) return
    const { known, report } = setting
    notLater(record.on, ['records', index, 'on'], setting)
    if (record.kind !== 'service-done') {
      refer(known.filters, record.filter, { path: ['records', index, 'filter'], report })
      return
    }
    if (!record.task) return
    subjectRule({ task: record.task, subject: record.subject }, ['records', index, 'subject'], setting)
    if (record.by === 'resident' && TECHNICIAN_ONLY.has(record.task)) {
      report(
        ['records', index, 'by'],
        `must be technician: a ${record.task.replace('-', ' ')} opens covers and measures what only a licensed technician may; leave it out if you don't know who came`,
      )
    }
  })
}

const TECHNICIAN_ONLY = new Set<Task>(['heating-service', 'cooling-service', 'boiler-service'])

/** What each task can be done to. */
const SUBJECTS: Record<Task, { part: keyof Known; devices?: readonly DeviceKind[] }> = {
  'change-filter': { part: 'filters' },
  'wash-filter': { part: 'filters' },
  'look-at-filter': { part: 'filters' },
  'heating-service': { part: 'systems' },
  'cooling-service': { part: 'systems' },
  'boiler-service': { part: 'systems' },
  'condensate-look': { part: 'systems', devices: ['condensate-drain', 'dehumidifier'] },
  'outdoor-unit-clear': { part: 'systems' },
  'humidifier-pad': { part: 'devices', devices: ['humidifier'] },
  'ventilator-hoods': { part: 'devices', devices: ['erv', 'hrv'] },
  'ventilator-core': { part: 'devices', devices: ['erv', 'hrv'] },
  'water-heater-look': { part: 'devices', devices: ['water-heater-gas', 'water-heater-electric'] },
  'alarm-test': { part: 'devices', devices: ['smoke-alarm', 'co-alarm'] },
  'alarm-replace': { part: 'devices', devices: ['smoke-alarm', 'co-alarm'] },
}

function subjectRule(
  { task, subject }: { task: Task; subject?: string },
  path: Path,
  { known, report }: Setting,
): void {
  if (subject === undefined) return
  const { part, devices } = SUBJECTS[task]
  const device = devices && known.devices.byId.get(subject)
  if (device && (!device.kind || devices?.includes(device.kind))) return
  // Some tasks may name either the system or the device at it.
  if (known[part].byId.has(subject) && part !== 'devices') return

  const wrong = nameOf(subject, known)
  if (wrong) {
    const kinds = devices ? ` (${devices.join(' or ')})` : ''
    const right = part === 'devices' ? `device${kinds}` : `${known[part].what}${devices ? ` or a device${kinds}` : ''}`
    report(path, `is ${wrong}, but the task ${task} is done to a ${right}; name that one`)
    return
  }
  if (devices && !known.devices.isComplete) return
  refer<unknown>(known[part], subject, { path, report })
}

function nameOf(id: string, known: Known): string | undefined {
  if (known.systems.byId.has(id)) return 'a system'
  if (known.filters.byId.has(id)) return 'a filter'
  const device: Loose<Device> | undefined = known.devices.byId.get(id)
  return device && `a ${device.kind ?? 'device'}`
}
