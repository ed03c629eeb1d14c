'use server'

import { redirect } from 'next/navigation'
import { minuteNow } from '@/app/check/load-place'
import { action } from '@/lib/access/action'
import { today } from '@/lib/clock'
import { listEpisode, recordEpisode } from '@/lib/data/episodes'
import { getHousehold } from '@/lib/data/households'
import { parseClearance } from '@/lib/forms/clearance-form'
import { lastMetOn } from '@/lib/guide/episode'

/** Records a professional's clearance or visit in the household's log. */
export const recordClearance = action<FormData>({
  name: 'guide-clearance',
  needs: 'member',
  parse: (form) => ({ ok: true, value: form }),
  run: async ({ input, act, viewer, householdId }) => {
    const { household } = await getHousehold(viewer, householdId)
    const lastFault = lastMetOn(await listEpisode(viewer, householdId))
    const parsed = parseClearance(input, { today: today(household.timeZone), lastFault })
    if (!parsed.ok) return parsed
    const { kinds, on, who } = parsed.value
    const minute = minuteNow()
    const events = kinds.map((kind) => ({ kind, on, minute, note: who, key: `by-hand.${kind}.${minute}` }))
    const recorded = await recordEpisode(act, householdId, events)
    if (!recorded.ok) return { ok: false, faults: [{ path: '', say: 'This home is no longer yours to record in.' }] }
    redirect(`/home/${householdId}/check`)
  },
})
