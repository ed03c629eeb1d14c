'use client'

import { useRouter } from 'next/navigation'
import { useCallback, useEffect, useRef, useState, useSyncExternalStore } from 'react'
import { dateInWords, plural } from '@/lib/core/day-words'
import { forgetTick, type KeptTick, keepTick, listKept, onKeptChange, type Sending, sendKept } from './kept-ticks'
import { keepPage } from './remember-page'

/** What this phone keeps for somebody, as it is now. */
export function useKept(account: string): KeptTick[] {
  const text = useSyncExternalStore(
    onKeptChange,
    () => JSON.stringify(listKept(account)),
    () => '[]',
  )
  return JSON.parse(text)
}

// Where reception is poor a phone never says that the network is back.
const AGAIN_MS = 60_000

/**
 * What was recorded on this phone without network and is still to be sent. It goes by itself when the page opens and
 * when the network is back; what the server refuses stays with the reason beside it.
 */
export function KeptList({ account }: { account: string }) {
  const kept = useKept(account)
  const router = useRouter()
  const [ended, setEnded] = useState<Sending>('done')
  const [sent, setSent] = useState(0)
  const sending = useRef({ busy: false, again: false })
  const send = useCallback(async () => {
    const state = sending.current
    // The network may come back while an attempt without it still hangs: that attempt is followed by another.
    state.again = state.busy
    if (state.busy) return
    state.busy = true
    let count = 0
    do {
      state.again = false
      const now = await sendKept(account)
      count += now.sent
      setEnded(now.ended)
    } while (state.again)
    state.busy = false
    if (count === 0) return
    setSent((before) => before + count)
    router.refresh()
    keepPage(location.href)
  }, [account, router])
  const waiting = kept.filter(({ fault }) => fault === null)
  const waits = waiting.length > 0
  useEffect(() => {
    if (!waits) return
    send()
    addEventListener('online', send)
    const again = setInterval(send, AGAIN_MS)
    return () => {
      removeEventListener('online', send)
      clearInterval(again)
    }
  }, [send, waits])
  const refused = kept.filter(({ fault }) => fault !== null)
  if (kept.length === 0 && sent === 0) return null
  return (
    <section className="notice kept no-print" aria-label="Kept on this phone">
      <div role="status">
        {sent > 0 && <p>{plural(sent, 'thing')} sent from this phone.</p>}
        {waits && (
          <p>
            <strong>{waiting.length} kept on this phone, to be sent.</strong>{' '}
            {ended === 'signed-out'
              ? 'You are signed out here. Sign in again, and they are sent.'
              : 'They are sent by themselves when there is network; nothing is lost.'}
          </p>
        )}
        {refused.length > 0 && (
          <p>
            <strong>{refused.length} could not be recorded.</strong> Nothing is lost: the reason stands beside each.
          </p>
        )}
      </div>
      {refused.length > 0 && (
        <ul className="lines">
          {refused.map((tick) => (
            <li key={`${tick.once} ${tick.did}`}>
              {wordsOf(tick)}
              <Refused tick={tick} send={send} />
            </li>
          ))}
        </ul>
      )}
      {waits && (
        <details>
          <summary>What waits</summary>
          <ul className="lines">
            {waiting.map((tick) => (
              <li key={`${tick.once} ${tick.did}`}>{wordsOf(tick)}</li>
            ))}
          </ul>
        </details>
      )}
      {waits && (
        <button type="button" onClick={send}>
          Send now
        </button>
      )}
    </section>
  )
}

function wordsOf({ what, on }: KeptTick): string {
  return `${what}, ${dateInWords(on, on)}`
}

function Refused({ tick, send }: { tick: KeptTick; send: () => Promise<void> }) {
  return (
    <>
      <p className="fault">{tick.fault}</p>
      <div className="buttons">
        <button
          type="button"
          onClick={() => {
            keepTick({ ...tick, fault: null })
            send()
          }}
        >
          Try again
        </button>
        <button type="button" className="quiet" onClick={() => forgetTick(tick)}>
          Take it off this phone
        </button>
      </div>
    </>
  )
}
