'use server'

import { redirect } from 'next/navigation'
import { briefOfAddress } from '@/app/check/brief/brief-of-address'
import { minuteInWords } from '@/app/check/brief/minute-words'
import { placeOf } from '@/app/check/load-place'
import { action } from '@/lib/access/action'
import { saveBrief } from '@/lib/data/briefs'
import { getHousehold } from '@/lib/data/households'
import { briefFacts } from './brief-facts'

/** Makes the brief of an address once more, with what is known now, and writes it into the log. */
export const writeBrief = action<string>({
  name: 'brief-write',
  needs: 'member',
  parse: (form) => ({ ok: true, value: String(form.get('search') ?? '') }),
  run: async ({ input: search, act, viewer, householdId }) => {
    const stored = await getHousehold(viewer, householdId)
    const place = await placeOf(viewer, householdId, new URLSearchParams(search).get('system'))
    const facts = briefFacts(stored, place.systemId, place.today)
    const made = briefOfAddress(place, search, facts, (minute) => minuteInWords(minute, stored.household.timeZone))
    if (made === null)
      return { ok: false, faults: [{ path: '', say: 'This walk can not be read any more. Begin the guide again.' }] }
    const { brief: page, severity, outcome, roomF, key } = made
    const saved = await saveBrief(act, householdId, { on: place.today, page, severity, outcome, roomF, key })
    if (!saved.ok) return { ok: false, faults: [{ path: '', say: 'This home is no longer yours to record in.' }] }
    redirect(`/home/${householdId}/brief/${saved.id}`)
  },
})
