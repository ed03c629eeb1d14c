'use client'

import { useEffect, useState } from 'react'
import type { GuidePlace } from '@/lib/guide/place'
import { briefOfAddress } from './brief-of-address'
import { BriefView } from './brief-view'
import { minuteInWords } from './minute-words'

/**
 * The brief without what only the server knows of a home, its time by the phone's own clock. Without scripts nobody
 * knows that clock: the time is in UTC then, and says so.
 */
export function PhoneBrief({ place, search }: { place: GuidePlace; search: string }) {
  const [timeZone, setTimeZone] = useState<string | undefined>('UTC')
  useEffect(() => setTimeZone(Intl.DateTimeFormat().resolvedOptions().timeZone), [])
  const nothingKnown = { household: null, system: null, filters: [] }
  const made = briefOfAddress(place, search, nothingKnown, (minute) => minuteInWords(minute, timeZone))
  return <BriefView place={place} search={search} made={made} />
}
