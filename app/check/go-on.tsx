'use client'

import { useEffect, useState } from 'react'
import { encodeWalk, parseWalk } from '@/lib/guide/address'
import { withResume } from '@/lib/guide/replay'

/** Where this phone keeps the address of the walk it is in. */
export const WALK_KEY = 'plenum.walk'
/** Older walks are begun anew: what was seen then is no guide to now. */
const HOURS = 12

/** Remembers on this phone where a walk stands, for a lost page or an empty battery. */
export function RememberWalk({ href }: { href: string }) {
  useEffect(() => {
    try {
      localStorage.setItem(WALK_KEY, href)
    } catch {
      // A browser that keeps nothing: then nothing is offered to go on with.
    }
  }, [href])
  return null
}

/** Offers the walk that was interrupted here; it goes on with the hazards asked again. */
export function GoOn({ base }: { base: string }) {
  const [href, setHref] = useState<string | null>(null)
  useEffect(() => {
    try {
      setHref(resumed(localStorage.getItem(WALK_KEY), base, Math.floor(Date.now() / 60_000)))
    } catch {
      setHref(null)
    }
  }, [base])
  if (href === null) return null
  return (
    <p>
      <a className="plain-tap" href={href}>
        Go on where you were
      </a>
    </p>
  )
}

function resumed(stored: string | null, base: string, now: number): string | null {
  if (stored === null || !stored.startsWith(`${base}/`)) return null
  const [path, search = ''] = stored.split('?')
  const parsed = parseWalk(`?${search}`)
  if (parsed.kind === 'broken' || parsed.walk.steps.length < 2) return null
  const { walk } = parsed
  if (walk.startedAt > now || now - walk.startedAt > HOURS * 60) return null
  const system = new URLSearchParams(search).get('system')
  return `${path}${encodeWalk(withResume(walk, now))}${system === null ? '' : `&system=${encodeURIComponent(system)}`}`
}
