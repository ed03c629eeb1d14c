import type { GuidePlace } from '@/lib/guide/place'
import { briefOfAddress } from '../brief/brief-of-address'
import { BriefView } from '../brief/brief-view'
import { minuteInWords } from '../brief/minute-words'

/** The brief made on the phone: without what only the server knows of the home. */
export function OfflineBrief({ place, search }: { place: GuidePlace; search: string }) {
  const nothingKnown = { household: null, system: null, filters: [] }
  const made = briefOfAddress(place, search, nothingKnown, (minute) => minuteInWords(minute, undefined))
  return <BriefView place={place} search={search} made={made} />
}
