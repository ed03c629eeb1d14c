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
  const found = (wall: number) =>
    stretches.filter(({ from, to, ahead }) => wall - ahead >= from && wall - ahead < to).map(({ ahead }) => ahead)
  // Between changes, nearly always, there is one answer: it is looked for where the last one was.
  let near = stretches[0] as Stretch
  const plain = (wall: number): number | undefined => {
    const at = (s: Stretch) => wall - s.ahead >= s.from + 2 * DAY && wall - s.ahead < s.to - 2 * DAY
    if (at(near)) return wall - near.ahead
    const other = stretches.find(at)
    if (!other) return undefined
    near = other
    return wall - other.ahead
  }
  function toUtc(wall: number, which: 0 | 1 = 0): number {
    const quick = plain(wall)
    if (quick !== undefined) return quick
    const aheads = found(wall)
    const ahead = aheads[Math.min(which, aheads.length - 1)]
    if (ahead !== undefined) return wall - ahead
    const before = stretches.findLast(({ to, ahead: a }) => wall - a >= to) ?? (stretches[0] as Stretch)
    return wall - before.ahead
  }
  return {
    toUtc,
    isTwice: (wall) => plain(wall) === undefined && found(wall).length > 1,
    isLeftOut: (wall) => plain(wall) === undefined && found(wall).length === 0,
    startOf: (day) => {
      const wall = day * DAY
      if (found(wall).length > 0) return toUtc(wall)
      // A zone whose clock changes at midnight: the day begins at the change.
      return stretches.find(({ from, ahead }) => from + ahead > wall)?.from ?? toUtc(wall)
    },
    dayOf: (utc) => {
      const { ahead } =
        utc >= near.from && utc < near.to
          ? near
          : (stretches.find(({ from, to }) => utc >= from && utc < to) ?? (stretches[0] as Stretch))
      return Math.floor((utc + ahead) / DAY)
    },
  }
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
