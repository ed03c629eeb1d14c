'use client'

import { type ComponentType, type ReactNode, type SyntheticEvent, useEffect, useRef, useState } from 'react'
import { now } from '@/lib/clock'
import type { FinderAddress } from './finder-of-address'

interface FinderProps {
  /** What stands behind the address's question mark, as the server was asked. */
  search: string
  /** The server's screen of it. */
  children: ReactNode
}

/**
 * The finder of an address. Each step is a plain link, and the size a plain form. Once the phone has what it needs for
 * it, which comes after the page, both are followed on the phone itself: that needs no network, also when this page
 * came out of the phone's own store with another address.
 */
export function Finder({ search, children }: FinderProps) {
  const [Replayed, setReplayed] = useState<ComponentType<FinderAddress> | null>(null)
  // Null: the server's screen still fits the address.
  const [shown, show] = useState<FinderAddress | null>(null)
  const steps = useRef(0)

  useEffect(() => {
    // Where it cannot be had, the links ask the server.
    import('./finder-of-address').then(({ FinderOfAddress }) => setReplayed(() => FinderOfAddress)).catch(() => {})
    const replay = () => show(addressShown())
    if (addressShown().search !== search) replay()
    window.addEventListener('popstate', replay)
    return () => window.removeEventListener('popstate', replay)
  }, [search])

  // The new screen is read from its heading, as a new page would be.
  // biome-ignore lint/correctness/useExhaustiveDependencies: each new address is a new screen.
  useEffect(() => {
    if (steps.current === 0) return
    window.scrollTo(0, 0)
    document.getElementById('main')?.focus()
  }, [shown?.search])

  function follow(event: SyntheticEvent, href: string | undefined): void {
    const url = new URL(href ?? '', window.location.href)
    if (!Replayed || url.origin !== window.location.origin || url.pathname !== '/find') return
    event.preventDefault()
    // The first answer is given now, not when the page was made.
    if (url.searchParams.has('a') && !url.searchParams.get('a')?.includes('.')) {
      url.searchParams.set('t', String(minutes()))
    }
    steps.current++
    window.history.pushState(null, '', url)
    show(addressShown())
  }

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only listens to the links and the form inside.
    // biome-ignore lint/a11y/useKeyWithClickEvents: a key on a link is a click.
    <div
      onClick={(event) => {
        const isPlain = event.button === 0 && !(event.metaKey || event.ctrlKey || event.shiftKey || event.altKey)
        const link = isPlain ? (event.target as Element).closest('a') : null
        if (link && !event.defaultPrevented) follow(event, link.href)
      }}
      onSubmit={(event) => {
        const form = event.target as HTMLFormElement
        if (form.method !== 'get' || event.defaultPrevented) return
        const sent = new URLSearchParams()
        for (const [name, value] of new FormData(form)) sent.append(name, String(value))
        follow(event, `${form.action}?${sent}`)
      }}
    >
      {shown && Replayed ? <Replayed {...shown} /> : children}
    </div>
  )
}

function addressShown(): FinderAddress {
  return { search: window.location.search.slice(1), nowMinutes: minutes() }
}

function minutes(): number {
  return Math.floor(now().getTime() / 60_000)
}
