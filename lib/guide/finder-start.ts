import type { KeyedEvent } from './booking'
import { episodeOn } from './episode'
import { dayOfMinute } from './phone-memory'

export interface FinderStart {
  answer: 'as-always' | 'not-as-always'
  /** When the walk through the finder began: sent twice, it is one start. */
  began: number
  minute: number
  /** The day where the home is; else that of the minute in UTC. */
  on?: string
}

/**
 * What turning it on again after the finder's step does to the memory of a trouble. Equipment that was well and starts
 * as always has no trouble, and nothing is booked; in a trouble that is remembered every start is the one start
 * (safety 6.2, 4), and one that goes otherwise than always is a start spent on a trouble that begins now.
 */
export function finderStart(start: FinderStart, events: readonly KeyedEvent[]): KeyedEvent[] {
  const { answer, began, minute, on = dayOfMinute(minute) } = start
  const key = `finder.${began}.turned-on`
  const spent = { kind: 'start-spent', on, at: minute, key } as const
  if (answer === 'not-as-always')
    return [
      { kind: 'trouble-began', on, at: minute, key: `${key}.0` },
      { ...spent, key: `${key}.1` },
    ]
  return isInTrouble(events, on) ? [{ ...spent, key: `${key}.1` }] : []
}

function isInTrouble(events: readonly KeyedEvent[], on: string): boolean {
  const { resetUsed, closedByHazard } = episodeOn(events, on)
  const last = [...events].sort((a, b) => b.at - a.at).find(({ on: day }) => day <= on)
  const isOpen = last?.kind === 'trouble-began' || last?.kind === 'trip'
  // What tripped twice has spent its start.
  return isOpen || closedByHazard !== 'no' || resetUsed === 'yes'
}
