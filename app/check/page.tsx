import type { Metadata } from 'next'
import { HazardText } from '@/app/parts/hazard-text'
import { AFTER, LEAVE, STOPS, UNWELL } from './hazards'

export const metadata: Metadata = { title: 'A problem right now' }

/** Asks nothing and needs nothing: it opens also while the database does not answer. */
export default function Page() {
  return (
    <main id="main" tabIndex={-1}>
      <HazardText level={1} heading="Gas, alarm, smoke: leave now" lines={LEAVE}>
        <p>{AFTER}</p>
      </HazardText>

      <h2>None of these? Then one of these?</h2>
      <dl className="stops">
        {STOPS.map(({ when, say }) => (
          <div key={when}>
            <dt>{when}</dt>
            <dd>{say}</dd>
          </div>
        ))}
      </dl>

      <h2>Too cold, or too hot</h2>
      {UNWELL.map((line) => (
        <p key={line}>{line}</p>
      ))}

      <h2>Whom to call</h2>
      <dl className="facts">
        <dt>Danger</dt>
        <dd>911, from outside</dd>
        <dt>Gas</dt>
        <dd>The emergency number on your gas bill, after 911, from outside</dd>
        <dt>You rent</dt>
        <dd>Your landlord, in writing, with the time and how warm it is inside. Danger never waits for a landlord.</dd>
        <dt>All else</dt>
        <dd>A licensed heating and cooling technician. Say what you saw, what you tried, and who is in the home.</dd>
      </dl>
      <p>Gas, burners, wiring and anything behind a cover that needs a tool are a technician’s, never yours.</p>
    </main>
  )
}
