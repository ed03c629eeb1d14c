import { notFound } from 'next/navigation'
import { cache } from 'react'
import { plans } from '@/app/plans'
import { today } from '@/app/today'
import { findViewer, requireViewer } from '@/lib/access/page'
import type { AccountViewer } from '@/lib/access/sign-in'
import type { Day } from '@/lib/core/day'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import { findHousehold, type StoredHousehold } from '@/lib/data/households'

/** What every page of one home starts from. */
export interface LoadedHome {
  viewer: AccountViewer
  stored: StoredHousehold
  on: Day
  plan: HouseholdPlan
}

/** Who looks and at which home, both null where there is none; asked once a request, by the page and by its title. */
export const findHome = cache(async (id: string) => {
  const viewer = await findViewer()
  return { viewer, stored: viewer && (await findHousehold(viewer, id)) }
})

/** The home of an address, for whoever may see it; signed out leads to sign-in, someone else's home to a 404. */
export async function loadHome(id: string, path: string): Promise<LoadedHome> {
  const { viewer: known, stored } = await findHome(id)
  const viewer = known ?? (await requireViewer(path))
  if (!stored) notFound()
  const on = await today(stored.household.timeZone)
  return { viewer, stored, on, plan: plans.of(stored, on) }
}
