import type { Day } from '@/lib/core/day'
import { isDay } from '@/lib/core/day'
import type { Fault } from '@/lib/core/fault'
import type { EpisodeKind } from '@/lib/guide/episode'
import { FIRST_MEANT, NOT_MEANT } from './quantities'

export interface Clearance {
  kinds: Extract<EpisodeKind, 'clearance' | 'technician-visit'>[]
  on: Day
  /** Who it was, in a person's own words. */
  who: string
}

/**
 * Who came, when, and what they said. `cleared`: they looked at what was met and said that it is safe. `visited`: a
 * technician worked on the equipment. `lastFault`: the day of the last start, trip or hazard. All faults at once.
 */
export function parseClearance(
  form: FormData,
  { today, lastFault }: { today: Day; lastFault: Day | null },
): { ok: true; value: Clearance } | { ok: false; faults: Fault[] } {
  const faults: Fault[] = []
  const what = form.get('what')
  const on = String(form.get('on') ?? '')
  const who = String(form.get('who') ?? '').trim()
  if (what !== 'cleared' && what !== 'visited' && what !== 'both')
    faults.push({ path: 'what', say: 'Choose what they did.' })
  if (!isDay(on)) faults.push({ path: 'on', say: 'Give the day on which they were here.' })
  else if (on < FIRST_MEANT) faults.push({ path: 'on', say: NOT_MEANT })
  else if (on > today) faults.push({ path: 'on', say: 'That day is still to come. Record it once they were here.' })
  else if (lastFault !== null && on < lastFault)
    faults.push({ path: 'on', say: `What was met came later, on ${lastFault}. A visit before it does not end it.` })
  if (who === '')
    faults.push({ path: 'who', say: 'Write who it was: the fire crew, the gas company, a technician’s name.' })
  else if (who.length > 120) faults.push({ path: 'who', say: 'Write it shorter: 120 letters at most.' })
  if (form.get('professional') !== 'yes')
    faults.push({
      path: 'professional',
      say: 'Only a crew or a licensed technician can clear it. Say that it was one.',
    })
  if (faults.length > 0) return { ok: false, faults }
  const kinds: Clearance['kinds'] =
    what === 'cleared' ? ['clearance'] : what === 'visited' ? ['technician-visit'] : ['clearance', 'technician-visit']
  return { ok: true, value: { kinds, on, who } }
}
