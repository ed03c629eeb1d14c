import { notFound } from 'next/navigation'
import { plans } from '@/app/plans'
import { today } from '@/app/today'
import { requireViewer } from '@/lib/access/page'
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

/** The home of an address, for whoever may see it; signed out leads to sign-in, someone else's home to a 404. */
export async function loadHome(id: string, path: string): Promise<LoadedHome> {
  const viewer = await requireViewer(path)
  const stored = await findHousehold(viewer, id)
  if (!stored) notFound()
  const on = await today(stored.household.timeZone)
  return { viewer, stored, on, plan: plans.of(stored, on) }
}
