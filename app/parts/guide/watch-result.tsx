import { STARTUP } from '@/content/guide/startup'
import type { TimedEvent } from '@/lib/guide/startup-watcher'
import { watchStartup } from '@/lib/guide/startup-watcher'
import { HazardText } from '../hazard-text'

const FITS = {
  within: 'within the usual range',
  early: 'earlier than usual',
  late: 'later than usual',
  'not-seen': 'not heard or felt',
}

/** What the timed start-up fits: a lean, never a diagnosis. */
export function WatchResult({ events }: { events: readonly TimedEvent[] }) {
  const watched = watchStartup(events, STARTUP)
  if (watched.kind === 'broken') return <p className="notice">{watched.because}</p>
  if (watched.kind === 'stop') return <HazardText heading="WARNING: a bang" lines={[watched.say]} />
  return (
    <section aria-labelledby="fits">
      <h2 id="fits">What it fits</h2>
      <p>
        <strong>{watched.first}</strong>
      </p>
      {watched.families.map(({ id, say, overlaps }) => (
        <p key={id}>
          {say} <span className="overlaps">{overlaps}</span>
        </p>
      ))}
      {watched.families.length === 0 && (
        <p>{watched.normal ? 'All came in its usual order and time.' : 'Too little was seen to lean either way.'}</p>
      )}
      <h3>The usual order, and yours</h3>
      <dl className="facts check-facts">
        {watched.rows.map(({ row, after, fits }) => (
          <div key={row.event}>
            <dt>{row.name}</dt>
            <dd>
              <strong>{after === null ? FITS[fits] : `${after} s, ${FITS[fits]}`}</strong>. Usual: {row.fromSeconds} to{' '}
              {row.toSeconds} s after the line before.
            </dd>
          </div>
        ))}
      </dl>
      <p>It may be one of these. A licensed technician finds out which.</p>
    </section>
  )
}
