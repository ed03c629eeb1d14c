import type { Day } from '@/lib/core/day'
import type { Light, LogRecord } from '@/lib/core/household'
import type { Act } from '@/lib/core/viewer'
import { getHousehold } from '@/lib/data/households'
import { addRecord } from '@/lib/data/records'
import type { GuidePlace } from '@/lib/guide/place'
import type { GuideNode } from '@/lib/guide/types'

const LIGHT: Record<string, Light> = { clean: 'clear', dark: 'dark', changed: 'dark' }

/**
 * A filter check in the guide is a look or a change in the household's log, and moves its dates. Where the system has
 * several filters the guide can not know which one it was: then it stands in the brief, and nothing is recorded.
 */
export async function recordFilterAnswer(
  act: Act,
  { home, systemId }: GuidePlace,
  node: GuideNode,
  answer: string,
  on: Day,
): Promise<void> {
  const light = LIGHT[answer]
  if (home === null || node.action !== 'filter' || light === undefined) return
  const { household } = await getHousehold(act.viewer, home.id)
  const system = systemId ?? (household.systems.length === 1 ? household.systems[0]?.id : null)
  const filters = household.filters.filter((filter) => filter.system === system && filter.medium !== 'screen')
  const [filter] = filters
  if (filter === undefined || filters.length !== 1) return
  const kind = answer === 'changed' ? 'filter-changed' : 'filter-looked'
  await addRecord(act, home.id, { on, kind, filter: filter.id, light } satisfies LogRecord)
}
