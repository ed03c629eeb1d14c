'use client'

import { useEffect } from 'react'
import type { KeyedEvent } from '@/lib/guide/booking'
import type { GuideHome } from '@/lib/guide/place'

/** What this phone keeps of one home, for when the network is gone. */
export interface KeptHome {
  home: GuideHome
  events: KeyedEvent[]
  today: string
}

const keyOf = (id: string) => `plenum.home.${id}`

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
    return text === null ? null : (JSON.parse(text) as KeptHome)
  } catch {
    return null
  }
}
