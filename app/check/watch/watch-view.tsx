import { ErrorSummary } from '@/app/parts/error-summary'
import { WatchClock } from '@/app/parts/guide/watch-clock'
import { WatchResult } from '@/app/parts/guide/watch-result'
import { WATCH_WORDS } from '@/app/parts/guide/watch-words'
import { HazardText } from '@/app/parts/hazard-text'
import { TextField } from '@/app/parts/text-field'
import { STARTUP } from '@/content/guide/startup'
import { parseTimes } from '@/lib/forms/guide-brief-form'
import { encodeWalk, parseWalk } from '@/lib/guide/address'
import { type GuidePlace, guideBase, placeEpisode } from '@/lib/guide/place'
import { STARTUP_EVENTS, type StartupEvent, type TimedEvent } from '@/lib/guide/startup-watcher'
import { encodeWatch, parseWatch } from '@/lib/guide/watch-address'

/** The start-up watcher: what is heard and felt from a step back, tapped or typed. */
export function WatchView({ place, search }: { place: GuidePlace; search: string }) {
  const base = guideBase(place.home?.id ?? null)
  const asked = new URLSearchParams(search)
  const parsed = parseWalk(search)
  const walk = parsed.kind === 'walk' ? parsed.walk : null
  const carried = walk === null ? '?' : `${encodeWalk(walk)}${place.systemId ? `&system=${place.systemId}` : ''}&`
  const closed = placeEpisode(place).closedByHazard !== 'no'
  const typed = STARTUP_EVENTS.map((event) => ({
    name: event,
    label: WATCH_WORDS[event],
    text: asked.get(event) ?? '',
  }))
  const { times, faults } = parseTimes(typed)
  const fromTyped = times.map(({ event, second }) => ({ event: event as StartupEvent, second }))
  const watched = asked.has('w') ? parseWatch(asked.get('w') ?? '') : null
  const events: TimedEvent[] = watched ?? (faults.length === 0 ? fromTyped : [])
  const isUnread = asked.has('w') && watched === null
  return (
    <main id="main" tabIndex={-1} className="guide">
      <h1>Time the start</h1>
      <HazardText
        heading="Stop at a bang"
        lines={[
          'Gas smell, a CO alarm, smoke, or people who feel ill: get out. Touch no switch. Call from far outside. A bang or boom: set the thermostat to OFF, and call a licensed technician today.',
        ]}
      />
      {closed ? (
        <p className="notice">
          A hazard was met and is not cleared. Do not wait near it for a start. Call a licensed technician.
        </p>
      ) : (
        <>
          <p className="lead">
            Do this only if it tries to start by itself. Do not start it for this. Stand a step back, with every cover
            on. Only listen, and feel the air at a grille.
          </p>
          {isUnread && <p className="notice">The times in this link can not be read. Tap or type them again.</p>}
          {events.length > 0 && <WatchResult events={events} />}
          {events.length > 0 && walk !== null && (
            <p>
              <a className="button" href={`${base}/brief${carried}w=${encodeWatch(events)}`}>
                Put it on the brief
              </a>
            </p>
          )}
          <WatchClock href={`${base}/watch${carried}w=`} />
          <ErrorSummary faults={faults.map(({ path, say }) => ({ field: path, say }))} />
          <details open={faults.length > 0 || undefined}>
            <summary>Type the times instead</summary>
            <form method="get" action={`${base}/watch`}>
              {carried !== '?' &&
                [...new URLSearchParams(carried)].map(([name, value]) => (
                  <input key={name} type="hidden" name={name} value={value} />
                ))}
              <p>Seconds after the thermostat asked, such as 45 or 1:30. Leave empty what you did not notice.</p>
              {typed.map(({ name, label, text }) => (
                <TextField
                  key={name}
                  id={name}
                  label={label}
                  className="short"
                  defaultValue={text}
                  autoComplete="off"
                  fault={faults.find(({ path }) => path === name)?.say}
                />
              ))}
              <button type="submit" className="main">
                What does it fit?
              </button>
            </form>
          </details>
          {events.length === 0 && <UsualOrder />}
        </>
      )}
      <nav className="guide-ways" aria-label="The guide">
        <a href={walk === null ? base : `${base}/${walk.flow}${encodeWalk(walk)}`}>Back</a>
        <a href={`${base}/emergency`}>Something changed: gas smell, alarm, smoke, someone ill</a>
      </nav>
    </main>
  )
}

function UsualOrder() {
  return (
    <>
      <p>{STARTUP.bursts}</p>
      <h2>The usual order of a gas furnace</h2>
      <dl className="facts check-facts">
        {STARTUP.rows.map((row) => (
          <div key={row.event}>
            <dt>{row.name}</dt>
            <dd>
              {row.fromSeconds} to {row.toSeconds} seconds after the line before. {row.note}
            </dd>
          </div>
        ))}
      </dl>
      <p className="hint">Ranges from seven makers’ manuals; no single figure holds for all.</p>
    </>
  )
}
