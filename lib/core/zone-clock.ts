import { type DayNumber, dayNumber } from './day'
import { localTime } from './zone'

/** What the wall clock of one zone shows over a stretch of time; seconds are those since 1970 in UTC, wall seconds those that a wall clock would count. */
export interface ZoneClock {
  /**
   * `which` 0 is the first time a wall clock shows this, 1 the second, in the hour that comes twice. A time that a
   * change of the clock leaves out is taken as so long after that change as it stands past it.
   */
  toUtc(wall: number, which?: 0 | 1): number
  /** Whether the wall clock shows this twice. */
  isTwice(wall: number): boolean
  /** Whether a change of the clock leaves this out. */
  isLeftOut(wall: number): boolean
  /** When a day begins. */
  startOf(day: DayNumber): number
  dayOf(utc: number): DayNumber
}

interface Stretch {
  from: number
  /** Exclusive. */
  to: number
  /** Seconds that the wall clock is ahead of UTC. */
  ahead: number
}

const DAY = 86_400

/** The clock of a zone from a first to a last day; days outside are shown by the offset at the nearer end. */
export function zoneClock(timeZone: string, first: DayNumber, last: DayNumber): ZoneClock {
  const stretches = stretchesOf(timeZone, (first - 3) * DAY, (last + 3) * DAY)
  // One after another they end later on the wall too: no clock goes back farther than it went on since the last change.
  const reached = (wall: number) => stretches.findIndex(({ to, ahead }) => wall < to + ahead)
  const isTwice = (wall: number) => hasBegun(stretches[reached(wall) + 1], wall)
  function toUtc(wall: number, which: 0 | 1 = 0): number {
    const at = reached(wall)
    const isLeftOut = !hasBegun(stretches[at], wall)
    const { ahead } = stretches[isLeftOut ? at - 1 : which === 1 && isTwice(wall) ? at + 1 : at] as Stretch
    return wall - ahead
  }
  return {
    toUtc,
    isTwice,
    isLeftOut: (wall) => !hasBegun(stretches[reached(wall)], wall),
    startOf: (day) => {
      const { from, ahead } = stretches[reached(day * DAY)] as Stretch
      // A zone whose clock changes at midnight: the day begins at the change.
      return Math.max(from, day * DAY - ahead)
    },
    dayOf: (utc) => {
      const { ahead } = stretches.find(({ to }) => utc < to) as Stretch
      return Math.floor((utc + ahead) / DAY)
    },
  }
}

/** Whether a wall clock has come to this time within a stretch, or is past it. */
function hasBegun(stretch: Stretch | undefined, wall: number): boolean {
  return stretch !== undefined && wall >= stretch.from + stretch.ahead
}

function stretchesOf(timeZone: string, from: number, to: number): Stretch[] {
  const aheadAt = (utc: number) => {
    const { day, hour, minute } = localTime(new Date(utc * 1000).toISOString(), timeZone)
    return Math.round((dayNumber(day) * 24 * 60 + hour * 60 + minute) * 60 - Math.floor(utc / 60) * 60)
  }
  const stretches: Stretch[] = []
  let begun = Number.NEGATIVE_INFINITY
  let ahead = aheadAt(from)
  for (let at = from; at < to; at += DAY) {
    const next = aheadAt(at + DAY)
    if (next === ahead) continue
    let [low, high] = [at, at + DAY]
    while (high - low > 60) {
      const middle = low + Math.floor((high - low) / 120) * 60
      if (aheadAt(middle) === ahead) low = middle
      else high = middle
    }
    stretches.push({ from: begun, to: high, ahead })
    begun = high
    ahead = next
  }
  stretches.push({ from: begun, to: Number.POSITIVE_INFINITY, ahead })
  return stretches
}
