import { cookies } from 'next/headers'
import { notFound, redirect } from 'next/navigation'
import { connection } from 'next/server'
import { requireViewer } from '@/lib/access/page'
import { now, today } from '@/lib/clock'
import { homeInWords, subjectInWords } from '@/lib/core/subject-words'
import type { Viewer } from '@/lib/core/viewer'
import { listEpisode } from '@/lib/data/episodes'
import { findHousehold, type StoredHousehold } from '@/lib/data/households'
import { asUnavailable, DatabaseUnavailable } from '@/lib/data/unavailable'
import { DEFAULT_EMERGENCY_NUMBER } from '@/lib/guide/export'
import { dayOfMinute, PHONE_COOKIE, readPhoneMemory } from '@/lib/guide/phone-memory'
import type { GuideHome, GuidePlace } from '@/lib/guide/place'

/** Whole minutes since 1970-01-01T00:00Z, as the addresses of the guide count them. */
export function minuteNow(): number {
  return Math.floor(now().getTime() / 60_000)
}

/** The guide for anybody: it asks the phone's own memory, and no account and no database. */
export async function phonePlace(): Promise<GuidePlace> {
  await connection()
  const events = readPhoneMemory((await cookies()).get(PHONE_COOKIE)?.value)
  const minute = minuteNow()
  return { home: null, systemId: null, events, today: dayOfMinute(minute), now: minute }
}

/** The guide in one home; signed out leads to sign-in, someone else's home to a 404. */
export async function homePlace(id: string, path: string, systemId: unknown): Promise<GuidePlace> {
  await connection()
  try {
    return await placeOf(await requireViewer(path), id, systemId)
  } catch (error) {
    // Without the home's data the guide for anybody is still there.
    if (asUnavailable(error) instanceof DatabaseUnavailable) redirect('/check')
    throw error
  }
}

/** The same for whoever is known to be signed in. */
export async function placeOf(viewer: Viewer, id: string, systemId: unknown): Promise<GuidePlace> {
  const stored = await findHousehold(viewer, id)
  if (!stored) notFound()
  const home = guideHome(stored)
  return {
    home,
    systemId: home.profile.systems.find((system) => system.id === systemId)?.id ?? null,
    events: (await listEpisode(viewer, id)).map(({ kind, on, at, key }) => ({ kind, on, at, key })),
    today: today(stored.household.timeZone),
    now: minuteNow(),
  }
}

/** What the guide may know of a home, and a phone may keep. */
export function guideHome({ id, household, contacts }: StoredHousehold): GuideHome {
  const { tenure, vulnerable, systems, emergencyNumber, timeZone, units, filters } = household
  return {
    id,
    name: homeInWords(household),
    timeZone,
    units,
    filters: filters
      .filter(({ medium }) => medium !== 'screen')
      .map((filter) => ({ id: filter.id, system: filter.system, name: subjectInWords(household, filter.id) })),
    profile: { tenure, vulnerable, systems },
    emergencyNumber: emergencyNumber ?? DEFAULT_EMERGENCY_NUMBER,
    contacts: contacts.map(({ kind, name, phone }) => ({ kind, name, phone })),
  }
}
