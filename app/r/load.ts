import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { plans } from '@/app/plans'
import { today } from '@/app/today'
import { currentLink, type LinkViewer } from '@/lib/access/links'
import type { Day } from '@/lib/core/day'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import { findHousehold, type StoredHousehold } from '@/lib/data/households'

/** What every page of a renter's link starts from. */
export interface RentedHome {
  viewer: LinkViewer
  stored: StoredHousehold
  on: Day
  plan: HouseholdPlan
}

/** The home of the link that this browser holds; without one, or with one that ended, the page that says so. */
export async function loadRentedHome(): Promise<RentedHome> {
  const viewer = await currentLink(await headers())
  const stored = viewer && (await findHousehold(viewer, viewer.householdId))
  if (!viewer || !stored) redirect('/r/ended')
  const on = await today(stored.household.timeZone)
  return { viewer, stored, on, plan: plans.of(stored, on) }
}
