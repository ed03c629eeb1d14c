import { headers } from 'next/headers'
import type { ReactNode } from 'react'
import { databasePage } from '@/app/database-page'
import { plans } from '@/app/plans'
import { today } from '@/app/today'
import { currentLink, type LinkViewer } from '@/lib/access/links'
import type { Day } from '@/lib/core/day'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import { findHousehold, type StoredHousehold } from '@/lib/data/households'
import { LinkEnded } from './link-ended'

/** What every page of a renter's link starts from. */
export interface RentedHome {
  viewer: LinkViewer
  stored: StoredHousehold
  on: Day
  plan: HouseholdPlan
}

/**
 * Wraps a page of a renter's link. Without one, or with one that ended, the page says so itself: sent elsewhere, a
 * browser without scripts would carry its form along.
 */
export function rentedPage<P>(render: (home: RentedHome, props: P) => Promise<ReactNode>) {
  return databasePage(async (props: P) => {
    const home = await findRentedHome()
    return home ? render(home, props) : <LinkEnded />
  })
}

async function findRentedHome(): Promise<RentedHome | null> {
  const viewer = await currentLink(await headers())
  const stored = viewer && (await findHousehold(viewer, viewer.householdId))
  if (!viewer || !stored) return null
  const on = await today(stored.household.timeZone)
  return { viewer, stored, on, plan: plans.of(stored, on) }
}
