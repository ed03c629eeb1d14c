import Link from 'next/link'
import { dayInWords } from '@/lib/core/day-words'
import { doorInWords } from '@/lib/core/log-words'
import { localDay } from '@/lib/core/zone'
import type { StoredHousehold } from '@/lib/data/households'
import type { GuideLine as Line } from './guide-lines'

/** One thing that the guide wrote down. It is not taken back here: a start stays used until a technician has been. */
export function GuideLine({ stored, line }: { stored: StoredHousehold; line: Line }) {
  const { on, what, details, by, at, door, href } = line
  return (
    <li className="log-line">
      <p className="log-day">{dayInWords(on)}</p>
      <h2>{href ? <Link href={href}>{what}</Link> : what}</h2>
      {details && <p>{details.charAt(0).toUpperCase() + details.slice(1)}.</p>}
      <p className="hint">
        Recorded by {by} on {dayInWords(localDay(at, stored.household.timeZone))}, {doorInWords(door)}.
      </p>
    </li>
  )
}
