'use client'

import { type ReactNode, useEffect } from 'react'

interface WaitLeftProps {
  /** Minutes since 1970-01-01T00:00Z. */
  until: number
  now: number
  /** The address of this screen. */
  here: string
  children: ReactNode
}

/** Until the time is over there is nothing to answer; with scripts the page looks again by itself. */
export function WaitLeft({ until, now, here, children }: WaitLeftProps) {
  const left = until - now
  useEffect(() => {
    if (left <= 0) return
    const timer = setTimeout(() => window.location.reload(), left * 60_000)
    return () => clearTimeout(timer)
  }, [left])
  if (left <= 0) return children
  return (
    <div className="wait-left">
      <p role="status">{left === 1 ? 'About one minute to go.' : `About ${left} minutes to go.`}</p>
      <ul className="taps">
        <li>
          <a className="tap" href={here}>
            Look if the time is over
          </a>
        </li>
      </ul>
    </div>
  )
}
