import type { Day } from '@/lib/core/day'
import type { LogRecord } from '@/lib/core/household'
import type { Act } from '@/lib/core/viewer'
import { addRecord } from '@/lib/data/records'
import type { GuidePlace } from '@/lib/guide/place'
import type { GuideNode } from '@/lib/guide/types'
import { lightOfAnswer, meantFilters } from '@/lib/guide/which-filter'

/**
 * A filter check in the guide is a look or a change in the household's log, and moves its dates. Where there are
 * several filters, `named` says which one was meant; without it the check stands in the brief, and nothing is recorded.
 */
export async function recordFilterAnswer(
  act: Act,
  place: GuidePlace,
  { node, answer, named, on }: { node: GuideNode; answer: string; named: string | null; on: Day },
): Promise<void> {
  const light = lightOfAnswer(answer)
  if (place.home === null || node.action !== 'filter' || light === null) return
  const kind = answer === 'changed' ? 'filter-changed' : 'filter-looked'
  for (const { id } of meantFilters(place, named))
    await addRecord(act, place.home.id, { on, kind, filter: id, light } satisfies LogRecord)
}
