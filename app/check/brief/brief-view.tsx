import type { ReactNode } from 'react'
import { RoomAgain } from '@/app/parts/guide/room-again'
import { degreesAsked } from '@/lib/forms/guide-brief-form'
import { type GuidePlace, guideBase, walkHref } from '@/lib/guide/place'
import type { AddressedBrief } from './brief-of-address'
import { BriefPages } from './brief-pages'

interface BriefViewProps {
  place: GuidePlace
  search: string
  made: AddressedBrief | null
  /** When the walk began, where the phone tells that by its own clock. */
  phoneMinute?: number | null
  /** What else may be done with it: written into the log, shared. */
  children?: ReactNode
}

/** The brief as its address makes it. */
export function BriefView({ place, search, made, phoneMinute = null, children }: BriefViewProps) {
  const base = guideBase(place.home?.id ?? null)
  if (made === null)
    return (
      <main id="main" tabIndex={-1} className="guide">
        <h1>There is no brief here</h1>
        <p>The link was cut short, or something was written down since. The guide begins again at the hazards.</p>
        <p>
          <a className="plain-tap" href={base}>
            To the hazards
          </a>
        </p>
      </main>
    )
  const asked = new URLSearchParams(search)
  return (
    <main id="main" tabIndex={-1} className="guide">
      {made.roomFault !== null && (
        <RoomAgain
          walk={made.walk}
          systemId={place.systemId}
          action={`${base}/brief`}
          typed={asked.get('room') ?? ''}
          isMetric={degreesAsked(asked.get('in')) === 'C'}
          watched={asked.get('w') ?? ''}
          fault={made.roomFault}
        />
      )}
      <BriefPages brief={made.brief} phoneMinute={phoneMinute} />
      {children}
      <nav className="guide-ways no-print" aria-label="The guide">
        <a href={walkHref(place, made.walk)}>Back to what to do</a>
        <a href={`${base}/emergency`}>Something changed: gas smell, alarm, smoke, someone ill</a>
      </nav>
    </main>
  )
}
