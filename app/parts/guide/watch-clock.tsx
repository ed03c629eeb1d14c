'use client'

import { useEffect, useRef, useState } from 'react'
import { STARTUP_EVENTS, type StartupEvent, type TimedEvent } from '@/lib/guide/startup-watcher'
import { encodeWatch } from '@/lib/guide/watch-address'
import { WATCH_WORDS } from './watch-words'

/** Where the times go: an address that ends in `w=`. */
export function WatchClock({ href }: { href: string }) {
  const [ready, setReady] = useState(false)
  const [events, setEvents] = useState<TimedEvent[]>([])
  const [now, setNow] = useState(0)
  const began = useRef(0)
  useEffect(() => setReady(true), [])
  const running = events.length > 0
  useEffect(() => {
    if (!running) return
    const timer = setInterval(() => setNow(Math.floor((performance.now() - began.current) / 1000)), 1000)
    return () => clearInterval(timer)
  }, [running])
  if (!ready) return null

  function tap(event: StartupEvent) {
    if (events.length === 0) began.current = performance.now()
    const second = Math.min(7200, Math.floor((performance.now() - began.current) / 1000))
    const next = [...events, { event, second }]
    // Nothing is worth watching after a bang.
    if (event === 'bang') window.location.href = `${href}${encodeWatch(next)}`
    else setEvents(next)
  }

  return (
    <section aria-labelledby="tap-it">
      <h2 id="tap-it">Tap as it happens</h2>
      <p className={running ? 'watch-clock' : undefined} role="timer" aria-live="off">
        {running
          ? `${Math.floor(now / 60)}:${String(now % 60).padStart(2, '0')}`
          : 'The clock starts with your first tap.'}
      </p>
      <ul className="taps watch-taps">
        {STARTUP_EVENTS.map((event) => (
          <li key={event}>
            <button type="button" className="tap" onClick={() => tap(event)}>
              {WATCH_WORDS[event]}
            </button>
          </li>
        ))}
      </ul>
      {running && (
        <>
          <ol className="watch-list" aria-live="polite">
            {events.map(({ event, second }, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: taps are only ever added at the end
              <li key={i}>
                {second} s: {WATCH_WORDS[event]}
              </li>
            ))}
          </ol>
          <div className="buttons">
            <a className="button main" href={`${href}${encodeWatch(events)}`}>
              Done: what does it fit?
            </a>
            <button type="button" onClick={() => setEvents(events.slice(0, -1))}>
              Take the last tap back
            </button>
          </div>
        </>
      )}
    </section>
  )
}
