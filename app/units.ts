import { connection } from 'next/server'
import { tables } from '@/content/tables'
import * as clock from '@/lib/clock'
import type { Day } from '@/lib/core/day'
import { type ListedHome, pressingItem, searchText } from '@/lib/core/home-list'
import type { Tenure } from '@/lib/core/household'
import type { Item } from '@/lib/core/plan-types'
import { subjectInWords } from '@/lib/core/subject-words'
import type { Viewer } from '@/lib/core/viewer'
import { daysByZone } from '@/lib/core/zone'
import type { Home, StoredHousehold } from '@/lib/data/households'
import { keepPlans } from '@/lib/data/kept-plans'
import { plans } from './plans'

/** What the pages of many homes need of one, without its description. Whoever asks gets the same one: no role is in it. */
export interface Unit extends ListedHome {
  /** Today in its own zone. */
  on: Day
  tenure: Tenure
  /** Everything of its plan that is not put off; nothing in a closed home. */
  items: Item[]
  /** What the pressing item is about. */
  subject: string
}

const kept = keepPlans<Unit>(digest, { version: tables.version })

function digest(stored: StoredHousehold, on: Day): Unit {
  const { id, name, building, household, state, putOffs } = stored
  const isOff = (item: Item) =>
    putOffs.some(({ task, subject, until }) => task === item.task && subject === item.subject && until > on)
  const planned = state === 'closed' ? [] : plans.of(stored, on).items
  const items = putOffs.length === 0 ? planned : planned.filter((item) => !isOff(item))
  const pressing = pressingItem(items)
  return {
    ...{ id, name, building, state, on, tenure: household.tenure, items, pressing },
    subject: pressing ? subjectInWords(household, pressing.subject) : '',
    search: searchText(`${name} ${building ?? ''}`),
  }
}

/** Every home that the viewer sees with what is due in it, and the viewer's role. Only what changed is planned anew. */
export async function listUnits(viewer: Viewer): Promise<{ home: Home; plan: Unit }[]> {
  await connection()
  return unitsOf(viewer, daysByZone(clock.today))
}

/** The same outside a request, where `today` says what day it is in a zone. */
export function unitsOf(viewer: Viewer, today: (timeZone: string) => Day): Promise<{ home: Home; plan: Unit }[]> {
  return kept.list(viewer, ({ timeZone }) => today(timeZone))
}
