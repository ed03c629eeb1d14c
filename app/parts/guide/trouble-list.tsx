import type { ReactNode } from 'react'
import { FLOWS } from '@/content/guide/flows'
import { emergencyNumber, type GuidePlace, guideBase, walkHref } from '@/lib/guide/place'
import { withAnswer } from '@/lib/guide/replay'
import { getNode } from '@/lib/guide/types'
import { SendForm } from './sent-answer'

interface TroubleListProps {
  place: GuidePlace
  /** When "no gas smell" was said, in minutes since 1970-01-01T00:00Z: it is the first answer of every walk. */
  at: number
  /** What was met before and is not cleared, and where an interrupted walk goes on. */
  children?: ReactNode
}

/** The ten troubles. Gas was denied a tap ago; the walk holds that answer and its time. */
export function TroubleList({ place, at, children }: TroubleListProps) {
  return (
    <>
      <main id="main" tabIndex={-1} className="guide">
        <h1>What is the trouble?</h1>
        {place.home && <p className="flow-name">{place.home.name}</p>}
        {children}
        <ul className="taps">
          {FLOWS.map((flow) => {
            const begun = { flow: flow.id, startedAt: at, steps: [] }
            const first = getNode(flow, flow.start)
            return (
              <li key={flow.id}>
                {place.home === null ? (
                  <a className="tap" href={walkHref(place, withAnswer(begun, first, 'no', at))}>
                    {flow.title}
                  </a>
                ) : (
                  <SendForm sent={{ place: { ...place, now: at }, walk: begun, node: first, answer: 'no' }}>
                    <button type="submit" className="tap">
                      {flow.title}
                    </button>
                  </SendForm>
                )}
              </li>
            )
          })}
        </ul>
      </main>
      <section className="guide-foot no-print" aria-label="Ways out">
        <p className="escape">
          <a className="escape-tap" href={`${guideBase(place.home?.id ?? null)}/emergency`}>
            <strong>Something changed</strong> Gas smell, alarm, smoke, someone ill: {emergencyNumber(place)}
          </a>
        </p>
        <nav className="guide-ways" aria-label="The guide">
          <a href={guideBase(place.home?.id ?? null)}>Back</a>
          <a href={place.home ? `/home/${place.home.id}` : '/'}>Leave the guide</a>
          <a href="/check/booklet">All of it on paper</a>
        </nav>
      </section>
    </>
  )
}
