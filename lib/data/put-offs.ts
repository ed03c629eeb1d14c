import { addDays, type Day } from '@/lib/core/day'
import type { Fault } from '@/lib/core/fault'
import type { Task } from '@/lib/core/household'
import { pauseFault } from '@/lib/core/pause'
import type { Act } from '@/lib/core/viewer'
import { together } from './connection'
import { endPauses, notePause } from './pauses'
import { type Refusal, raise, signature } from './scope'

/** An alarm past its life may not warn of anything: its replacement is put off by a month at most. */
const SAFETY_TASKS: readonly Task[] = ['alarm-replace']
const SAFETY_DAYS = 30

export type Done = { ok: true; revision: number } | Refusal | { ok: false; because: 'fault'; faults: Fault[] }

/** Puts an item off until a day; `today` is today in the household's zone. A later one takes the place of an earlier. */
export function putOff(
  act: Act,
  householdId: string,
  { task, subject, until, today }: { task: Task; subject: string; until: Day; today: Day },
): Promise<Done> {
  return together(async (tx) => {
    const fault = putOffFault(task, until, today)
    const raised = await raise(tx, act.viewer, householdId, { deed: 'record' })
    if (!raised.ok) return raised
    if (fault) return { ok: false, because: 'fault', faults: [{ path: 'until', say: fault }] }
    const row = { until, at: act.at, ...signature(act.viewer) }
    await tx.putOff.upsert({
      where: { householdId_task_subject: { householdId, task, subject } },
      create: { householdId, task, subject, ...row },
      update: row,
    })
    await notePause(tx, act, householdId, { kind: 'put-off', task, subject, from: today, until })
    return { ok: true, revision: raised.revision }
  })
}

function putOffFault(task: Task, until: Day, today: Day): string | null {
  if (SAFETY_TASKS.includes(task) && until > addDays(today, SAFETY_DAYS)) {
    return `An alarm that may no longer warn you can be put off by ${SAFETY_DAYS} days at most. Choose an earlier day.`
  }
  return pauseFault(until, today)
}

/** Lets an item be heard of again. */
export function clearPutOff(
  act: Act,
  householdId: string,
  { task, subject }: { task: Task; subject: string },
): Promise<Done> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'record' })
    if (!raised.ok) return raised
    await tx.putOff.deleteMany({ where: { householdId, task, subject } })
    await endPauses(tx, act, householdId, { kind: 'put-off', task, subject })
    return { ok: true, revision: raised.revision }
  })
}
