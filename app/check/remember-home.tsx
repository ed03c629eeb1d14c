'use client'

import { useEffect } from 'react'
import type { KeyedEvent } from '@/lib/guide/booking'
import type { GuideHome } from '@/lib/guide/place'
import { WALK_KEY } from './go-on'

/** What this phone keeps of one home, for when the network is gone. */
export interface KeptHome {
  home: GuideHome
  events: KeyedEvent[]
  today: string
}

const PREFIX = 'plenum.home.'
/** Where the worker keeps walking lists. */
const LISTS = 'plenum-lists-1'
const keyOf = (id: string) => `${PREFIX}${id}`

/** On every page that knows that nobody is signed in: what this phone kept of homes goes, and the walk begun in one. */
export function ForgetHomes() {
  useEffect(() => {
    try {
      for (const key of Object.keys(localStorage)) if (key.startsWith(PREFIX)) localStorage.removeItem(key)
      if (localStorage.getItem(WALK_KEY)?.startsWith('/home/')) localStorage.removeItem(WALK_KEY)
    } catch {
      // A browser that keeps nothing has nothing to forget.
    }
    // The walking lists go too. What was recorded on the way stays: only the one who recorded it is shown it and sends it.
    globalThis.caches?.delete(LISTS).catch(() => {})
  }, [])
  return null
}

export function RememberHome({ home, events, today }: KeptHome) {
  useEffect(() => {
    try {
      localStorage.setItem(keyOf(home.id), JSON.stringify({ home, events, today } satisfies KeptHome))
    } catch {
      // A browser that keeps nothing: offline the guide then asks what it does not know.
    }
  }, [home, events, today])
  return null
}

export function readKeptHome(id: string): KeptHome | null {
  try {
    const text = localStorage.getItem(keyOf(id))
    const kept = text === null ? null : (JSON.parse(text) as KeptHome)
    // One kept by an earlier version lacks what the guide asks of it now.
    return kept?.home.filters && kept.home.timeZone ? kept : null
  } catch {
    return null
  }
}
