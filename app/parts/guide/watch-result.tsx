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
      <table>
        <caption>The usual order, and yours</caption>
        <thead>
          <tr>
            <th scope="col">What happens</th>
            <th scope="col">Usual wait</th>
            <th scope="col">Yours</th>
          </tr>
        </thead>
        <tbody>
          {watched.rows.map(({ row, after, fits }) => (
            <tr key={row.event}>
              <td>{row.name}</td>
              <td>
                {row.fromSeconds} to {row.toSeconds} s
              </td>
              <td>{after === null ? FITS[fits] : `${after} s, ${FITS[fits]}`}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>It may be one of these. A licensed technician finds out which.</p>
    </section>
  )
}
