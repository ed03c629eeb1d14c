import type { Task } from '@/lib/core/household'
import type { TaskRow } from '@/lib/core/tables'

const ENERGY_STAR = 'US EPA and DOE, ENERGY STAR maintenance guidance'
const HRV = 'government guidance on heat-recovery ventilators'

function row(
  task: Task,
  doer: TaskRow['doer'],
  mark: TaskRow['mark'],
  words: Pick<TaskRow, 'what' | 'reason' | 'source'>,
): [Task, TaskRow] {
  return [task, { task, doer, mark, ...words }]
}

/** Each task: what it is, who does it, on whose word. Gas, electrical, refrigerant and combustion work is always the technician's. */
export const tasks = Object.fromEntries([
  row('change-filter', 'resident', 'G', {
    what: 'Turn the fan off, take the old filter out, put the new one in with its arrow the way the air moves.',
    reason: 'A loaded filter starves the blower of air.',
    source: ENERGY_STAR,
  }),
  row('wash-filter', 'resident', 'P', {
    what: 'Rinse it with lukewarm water and let it dry fully before it goes back.',
    reason: 'A loaded filter starves the blower of air.',
  }),
  row('look-at-filter', 'resident', 'G', {
    what: 'Hold it to a lamp: how much light comes through?',
    reason: 'A look tells more than any estimate.',
    source: ENERGY_STAR,
  }),
  row('heating-service', 'technician', 'G', {
    what: 'A licensed technician inspects, cleans and tests the heating before its season.',
    reason: 'A yearly check before the heating season finds what would fail in it.',
    source: ENERGY_STAR,
  }),
  row('cooling-service', 'technician', 'G', {
    what: 'A licensed technician inspects, cleans and tests the cooling before its season.',
    reason: 'A yearly check before the cooling season finds what would fail in it.',
    source: ENERGY_STAR,
  }),
  row('boiler-service', 'technician', 'G', {
    what: 'A licensed technician inspects, cleans and tests the boiler before the heating season.',
    reason: 'A yearly check before the heating season finds what would fail in it.',
    source: ENERGY_STAR,
  }),
  row('condensate-look', 'resident', 'P', {
    what: 'From outside: does water drip where the line ends, is the floor and pan dry? Open nothing.',
    reason: 'A blocked drain floods the floor or stops the cooling.',
  }),
  row('humidifier-pad', 'resident', 'P', {
    what: 'Turn the humidifier off first and follow its manual; if its cover needs a tool, leave it to a technician.',
    reason: 'A scaled pad gives no moisture and may drip.',
  }),
  row('outdoor-unit-clear', 'resident', 'P', {
    what: 'Cooling and heating off at the thermostat, then clear leaves and plants two feet (60 cm) around it by hand. Reach into nothing.',
    reason: 'The outdoor unit needs air.',
  }),
  row('ventilator-hoods', 'resident', 'G', {
    what: 'From the ground only: brush leaves and lint off the two hoods.',
    reason: 'Blocked hoods stop the fresh air.',
    source: HRV,
  }),
  row('ventilator-core', 'resident', 'G', {
    what: 'Unplug it first and follow its manual; if a cover needs a tool, leave it to a technician.',
    reason: 'A dusty core passes less air and less heat.',
    source: HRV,
  }),
  row('water-heater-look', 'resident', 'P', {
    what: 'From outside: no water on the floor, no rust, nothing stored against it. Flushing follows its manual: sources say every 3, 6 or 12 months.',
    reason: 'A leak shows on the floor first.',
  }),
  row('alarm-test', 'resident', 'G', {
    what: 'Press its test button until it sounds.',
    reason: 'An alarm that does not sound saves nobody.',
    source: 'US Fire Administration',
  }),
  row('alarm-replace', 'resident', 'S', {
    what: 'Its sensor wears out; fit a new one before the day.',
    reason: 'An old alarm may stay silent.',
    source: 'NFPA 72',
  }),
]) as Record<Task, TaskRow>
