import { profiles } from '@/app/plans'
import { tables } from '@/content/tables'
import * as clock from '@/lib/clock'
import { addMonths, type Day, dayNumber, dayText } from '@/lib/core/day'
import { type Need, type OrderLine, orderLines } from '@/lib/core/orders'
import { planParts } from '@/lib/core/plan'
import { changesWithin, kindKey, supplyKind } from '@/lib/core/supplies'
import type { Viewer } from '@/lib/core/viewer'
import { daysByZone } from '@/lib/core/zone'
import type { StoredHousehold } from '@/lib/data/households'
import { keepPlans } from '@/lib/data/kept-plans'
import { listStock } from '@/lib/data/stock'
import { MONTHS, type SuppliesQuery } from '@/lib/forms/stock-form'

const LONGEST = Math.max(...MONTHS)

// The longest time is reckoned once; a shorter one is its beginning.
const kept = keepPlans<Need[]>(needsOf, { version: tables.version })

function needsOf({ household, state }: StoredHousehold, on: Day): Need[] {
  if (state === 'closed') return []
  const day = dayNumber(on)
  const needs = new Map<string, Need>()
  for (const bought of planParts(household, tables, day, profiles()).bought) {
    const kind = supplyKind(bought, tables.figures.assumedMerv.value)
    const days = changesWithin(bought, day, LONGEST).map(dayText)
    const known = needs.get(kindKey(kind))
    if (known) known.days.push(...days)
    else needs.set(kindKey(kind), { kind, days })
  }
  return [...needs.values()]
}

export interface Order {
  on: Day
  /** Homes that were counted. */
  homes: number
  lines: OrderLine[]
}

/** The order of everything that the viewer's homes need, less what is on the viewer's shelf. */
export async function orderFor(viewer: Viewer, { months, leadDays }: SuppliesQuery): Promise<Order> {
  const today = daysByZone(clock.today)
  const homes = await kept.list(viewer, ({ timeZone }) => today(timeZone))
  // Where homes lie in several zones, the order is of the day that it is in the first of them.
  const first = homes[0]
  const on = first ? today(first.home.timeZone) : clock.today('UTC')
  const needs = homes.flatMap(({ plan }) => plan)
  const stock = await listStock(viewer)
  return { on, homes: homes.length, lines: orderLines(needs, stock, { on, until: addMonths(on, months), leadDays }) }
}
