import type { Ran } from '@/lib/access/action'
import { today } from '@/lib/clock'
import type { Act, Viewer } from '@/lib/core/viewer'
import { listHomes } from '@/lib/data/households'
import { recordTogether } from '@/lib/data/record-together'
import { recordOfTick, type TickedForm } from '@/lib/forms/ticked-form'
import { type Recorded, saidOf } from './said'

interface Sent {
  input: TickedForm
  act: Act
  viewer: Viewer
}

/** Records what was ticked as one, and says what came of it. The same `once` sent again records nothing twice. */
export async function recordTheTicked({ input: { on, ticked, once }, act, viewer }: Sent): Promise<Ran<Recorded>> {
  const homes = new Map((await listHomes(viewer)).map((home) => [home.id, home]))
  const ahead = ticked.some(({ householdId }) => on > today(homes.get(householdId)?.timeZone ?? 'UTC'))
  if (ahead)
    return {
      ok: false,
      faults: [{ path: 'on', say: 'Choose today or an earlier day: only what has happened counts.' }],
    }
  const recorded = await recordTogether(
    act,
    ticked.map((tick) => ({
      householdId: tick.householdId,
      record: recordOfTick(tick, on),
      key: `${once} ${tick.task} ${tick.subject}`,
    })),
  )
  if (!recorded.ok) {
    const say = (path: string) => (homes.get(path) ? `${homes.get(path)?.name}: ` : '')
    return {
      ok: false,
      faults: recorded.faults.map((fault) => ({ path: '', say: `${say(fault.path)}${fault.say}` })),
    }
  }
  return { ok: true, done: saidOf(recorded.outcomes, (id) => homes.get(id)?.name ?? id) }
}
