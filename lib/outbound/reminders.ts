import { isColdMonth } from '@/lib/core/away'
import { addDays, type Day, daysBetween } from '@/lib/core/day'
import { dayInWords } from '@/lib/core/day-words'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import { may } from '@/lib/core/viewer'
import { localDay, weekdayOf } from '@/lib/core/zone'
import { type Away, listAways } from '@/lib/data/aways'
import { readInParts, type StoredHousehold } from '@/lib/data/households'
import type { KeptPlans } from '@/lib/data/kept-plans'
import type { Reminded } from '@/lib/data/remindings'
import type { Advice, Told } from './digest'
import { isPutOff } from './item-words'

/** Safety is not put off for longer, whoever is away. */
const SAFETY_DAYS = 30

/** Everything that somebody could be told of now, and what an empty house needs. */
export interface Tidings {
  told: Told[]
  advice: Advice[]
}

/** What there is to say to one person, home by home: items within two weeks, due or overdue, that nobody has put off. */
export async function tidingsFor(
  { accountId, name }: Pick<Reminded, 'accountId' | 'name'>,
  at: string,
  plans: KeptPlans<HouseholdPlan>,
  freezeWatch: readonly string[],
): Promise<Tidings> {
  const viewer = { kind: 'account', accountId, name, administrator: false } as const
  const mine = (await plans.list(viewer, (home) => localDay(at, home.timeZone))).filter(
    ({ home }) => home.state === 'open' && may(home.role, 'record'),
  )
  const aways = await listAways(mine.map(({ home }) => home.id))
  const wanted = mine.filter(
    ({ home, plan }) => aways.has(home.id) || plan.items.some(({ state }) => state !== 'later'),
  )
  const unread = wanted.filter(({ stored }) => !stored).map(({ home }) => home.id)
  const read = new Map<string, StoredHousehold>()
  for await (const part of readInParts(viewer, unread)) for (const stored of part) read.set(stored.id, stored)
  const told: Told[] = []
  const advice: Advice[] = []
  for (const { home, plan, stored = read.get(home.id) } of wanted) {
    // Gone since the list was read.
    if (!stored) continue
    const on = localDay(at, stored.timeZone)
    const away = aways.get(stored.id)
    const isAway = away !== undefined && away.until > on
    for (const item of plan.items) {
      if (item.state === 'later' || isPutOff(stored, item, on)) continue
      if (isAway && !mustBeTold(item.task, away, on)) continue
      told.push({ stored, item, on })
    }
    if (isAway && isColdMonth(stored.household.climate, on)) advice.push(freezeAdvice(stored, away, on, freezeWatch))
  }
  return { told, advice }
}

// While nobody is at home nothing can be done there; an alarm past its life waits no longer than a put-off may.
function mustBeTold(task: string, away: Away, on: Day): boolean {
  return task === 'alarm-replace' && daysBetween(away.from, on) > SAFETY_DAYS
}

function freezeAdvice(stored: StoredHousehold, { until }: Away, on: Day, say: readonly string[]): Advice {
  const head = `Nobody is at home until ${dayInWords(until, on)}, and it may freeze.`
  return { stored, title: 'Freeze watch', say: [head, ...say] }
}

/** The last day up to `on`, itself included, that is the chosen weekday. */
export function lastSlot(on: Day, weekday: number): Day {
  return addDays(on, -((((weekdayOf(on) - weekday) % 7) + 7) % 7))
}
