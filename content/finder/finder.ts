import type { Finder } from '@/lib/guide/finder-types'
import { DUCTED } from './ducted'
import { ENDS } from './ends'
import { FILTER } from './filter'
import { OTHER_KINDS } from './other-kinds'
import { START } from './start'

/** When the safety sentences were last read against their sources. */
export const FINDER_REVIEWED = '2026-11-25'

/**
 * Stands on every screen before the end, as plain text, beside a link to the emergency page. `{emergency}` is the number
 * of the home, or 911 where none is known.
 */
export const FINDER_ESCAPE =
  'Smell gas, hear an alarm, see smoke? Get everyone out, touch no switch, call {emergency} from outside.'

export const FINDER: Finder = {
  start: 'hazards',
  screens: [...START, ...DUCTED, ...OTHER_KINDS, ...FILTER, ...ENDS],
}
