'use client'

import { useEffect, useRef, useState } from 'react'
import { FINDER } from '@/content/finder/finder'
import { now } from '@/lib/clock'
import { walkFinder } from '@/lib/guide/finder-address'
import { FinderScreen } from './finder-screen'

interface FinderProps {
  /** What stands behind the address's question mark, as the server was asked. */
  search: string
  nowMinutes: number
}

/**
 * The finder of an address. Each step is a plain link; where scripts run it is replayed on the phone instead, which
 * needs no network, also when this page came out of the phone's own store with another address.
 */
export function Finder(props: FinderProps) {
  const [shown, show] = useState(props)
  const steps = useRef(0)
  const main = useRef<HTMLElement>(null)

  useEffect(() => {
    function replay() {
      show((before) => {
        const search = window.location.search.slice(1)
        return search === before.search ? before : { search, nowMinutes: minutes() }
      })
    }
    replay()
    window.addEventListener('popstate', replay)
    return () => window.removeEventListener('popstate', replay)
  }, [])

  // The new screen is read from its heading, as a new page would be.
  // biome-ignore lint/correctness/useExhaustiveDependencies: each new address is a new screen.
  useEffect(() => {
    if (steps.current === 0) return
    window.scrollTo(0, 0)
    main.current?.focus()
  }, [shown.search])

  function go(href: string): void {
    const url = new URL(href, window.location.href)
    // The first answer is given now, not when the page was made.
    if (url.searchParams.has('a') && !url.searchParams.get('a')?.includes('.')) {
      url.searchParams.set('t', String(minutes()))
    }
    steps.current++
    window.history.pushState(null, '', url)
    show({ search: url.search.slice(1), nowMinutes: minutes() })
  }

  const fields = new URLSearchParams(shown.search)
  const field = (name: string) => fields.get(name) ?? ''
  const walk = walkFinder(FINDER, { a: field('a'), t: field('t'), k: field('k') }, shown.nowMinutes)
  return (
    <FinderScreen
      ref={main}
      walk={walk}
      began={walk.steps.length === 0 ? String(shown.nowMinutes) : field('t')}
      field={field}
      go={go}
    />
  )
}

function minutes(): number {
  return Math.floor(now().getTime() / 60_000)
}
