import { addYears, compareDays, type Day, type DayNumber, dayNumber, dayText } from './day'
import { type Due, periodWindow, sourced, taskReason } from './due'
import type { History } from './history'
import type { Device, Task } from './household'
import type { Reason, Warning } from './plan-types'
import { deviceInWords } from './subject-words'
import type { FigureName, Tables, TaskRow } from './tables'

/** The tasks of a device that go by the calendar alone, with their periods. */
const PERIODS: Partial<Record<Device['kind'], [Task, FigureName][]>> = {
  erv: [
    ['ventilator-hoods', 'hoodsDays'],
    ['ventilator-core', 'coreDays'],
  ],
  hrv: [
    ['ventilator-hoods', 'hoodsDays'],
    ['ventilator-core', 'coreDays'],
  ],
  'water-heater-gas': [['water-heater-look', 'waterHeaterDays']],
  'water-heater-electric': [['water-heater-look', 'waterHeaterDays']],
  'smoke-alarm': [['alarm-test', 'alarmTestDays']],
  'co-alarm': [['alarm-test', 'alarmTestDays']],
}

/** What a device needs by the calendar and by its age, with what could not be told. */
export function deviceTasks(
  device: Device,
  history: History,
  since: DayNumber,
  tables: Tables,
): { dues: Due[]; warnings: Warning[] } {
  const dues = (PERIODS[device.kind] ?? []).map(([task, period]) =>
    periodic(task, device.id, history.lastDone(task, device.id), since, tables.figures[period].value, tables),
  )
  if (!isAlarm(device)) return { dues, warnings: [] }
  const replaceOn = alarmEnd(device, history.lastDone('alarm-replace', device.id), tables)
  if (replaceOn === null) return { dues, warnings: [unknownAge(device)] }
  dues.push(alarmReplace(device, replaceOn, tables))
  return { dues, warnings: [] }
}

function periodic(
  task: Task,
  subject: string,
  last: DayNumber | null,
  since: DayNumber,
  days: number,
  tables: Tables,
): Due {
  const row = tables.tasks[task]
  const { earliest, due, latest } = periodWindow(last === null ? since : last + days, days)
  const { doer } = row
  return last === null
    ? { task, subject, doer, earliest, due, latest, basis: 'never-recorded', reasons: [NEVER, taskReason(row)] }
    : { task, subject, doer, earliest, due, latest, basis: 'calendar', reasons: [every(days, row), taskReason(row)] }
}

const NEVER: Reason = { say: 'Nothing is recorded about it yet.', mark: 'C' }

function every(days: number, { mark }: TaskRow): Reason {
  return { say: `${days} days after it was last done.`, mark }
}

function isAlarm(device: Device): boolean {
  return device.kind === 'smoke-alarm' || device.kind === 'co-alarm'
}

/** The day an alarm's life ends; null where neither its age nor an end of life is known. */
function alarmEnd(device: Device, replaced: DayNumber | null, { figures }: Tables): Day | null {
  // A new alarm counts from its fitting, until its own dates are entered.
  const fitted = replaced === null ? undefined : dayText(replaced)
  const isNewer = fitted !== undefined && (device.made === undefined || device.made < fitted)
  const made = isNewer ? fitted : device.made
  const printed = isNewer && device.endOfLife !== undefined && device.endOfLife <= fitted ? undefined : device.endOfLife
  const years = device.kind === 'smoke-alarm' ? figures.smokeAlarmYears.value : figures.coAlarmYears.value
  const byAge = made === undefined ? null : addYears(made, years)
  if (printed === undefined) return byAge
  if (device.kind === 'co-alarm' || byAge === null) return printed
  return compareDays(printed, byAge) < 0 ? printed : byAge
}

function alarmReplace(device: Device, replaceOn: Day, tables: Tables): Due {
  const row = tables.tasks['alarm-replace']
  const due = dayNumber(replaceOn)
  const years = device.kind === 'smoke-alarm' ? tables.figures.smokeAlarmYears : tables.figures.coAlarmYears
  const age =
    replaceOn === device.endOfLife
      ? sourced('The end of life printed on it.', 'P', undefined)
      : sourced(`${years.value} years after it was made. ${years.reason}`, years.mark, years.source)
  return {
    task: 'alarm-replace',
    subject: device.id,
    doer: row.doer,
    earliest: due - tables.figures.alarmWindowDays.value,
    due,
    latest: due,
    basis: 'age',
    reasons: [age, taskReason(row)],
  }
}

function unknownAge(device: Device): Warning {
  const name = deviceInWords(device.kind)
  const say = `The ${name}’s age is not known. Read the date on its back and enter it; an alarm without a readable date should be replaced.`
  return { code: 'alarm-age-unknown', subject: device.id, say }
}
