import type { GuidePlace } from '@/lib/guide/place'
import { briefOfAddress } from './brief-of-address'
import { BriefView } from './brief-view'
import { minuteInWords } from './minute-words'

/** The brief without what only the server knows of a home, in UTC until the phone puts it into its own time. */
export function PhoneBrief({ place, search }: { place: GuidePlace; search: string }) {
  const nothingKnown = { household: null, system: null, filters: [] }
  const made = briefOfAddress(place, search, nothingKnown, (minute) => minuteInWords(minute, 'UTC'))
  return <BriefView place={place} search={search} made={made} phoneMinute={made?.walk.startedAt ?? null} />
}
