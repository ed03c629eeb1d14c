'use client'

import { useEffect, useState } from 'react'
import { FirstScreen } from '@/app/parts/guide/first-screen'
import { GuideScreen } from '@/app/parts/guide/guide-screen'
import { TroubleList } from '@/app/parts/guide/trouble-list'
import { findFlow } from '@/content/guide/flows'
import { DEFAULT_EMERGENCY_NUMBER } from '@/lib/guide/export'
import { emergencyNumber, guideBase } from '@/lib/guide/place'
import { PhoneBrief } from '../brief/phone-brief'
import { GoOn, RememberWalk } from '../go-on'
import { Remembered } from '../remembered'
import { saidAt } from '../said-at'
import { WatchView } from '../watch/watch-view'
import { type PhonePlace, readPlace } from './read-place'

interface Asked {
  /** What stands behind the base: `''`, `trouble`, `emergency`, a flow. */
  rest: string
  search: string
  place: PhonePlace
}

/** The screen of the address, from what this phone remembers. */
export function ReplayedGuide() {
  const [asked, setAsked] = useState<Asked | null>(null)
  useEffect(() => {
    const { pathname, search } = window.location
    const [, homeId, rest = ''] = /^(?:\/home\/([^/]+))?\/check\/?(.*)$/.exec(pathname) ?? []
    readPlace(homeId ?? null, search).then((place) => setAsked({ rest, search, place }))
  }, [])
  if (asked === null) return <FirstScreen next="/check" number={DEFAULT_EMERGENCY_NUMBER} opening />
  return (
    <>
      <p className="notice guide-notice" role="status">
        No network. The guide goes on, on this phone.
        {!asked.place.isKnown &&
          ' This phone has not opened this home’s guide before. So it does not know the equipment, or what was tried there: it asks you. What you answer is sent to the home once the network is back.'}
      </p>
      <Shown {...asked} />
    </>
  )
}

function Shown({ rest, search, place }: Asked) {
  const base = guideBase(place.home?.id ?? null)
  const number = emergencyNumber(place)
  const next = `${base}/trouble?at=${place.now}`
  if (rest === 'emergency') return <FirstScreen next={null} number={number} />
  if (rest === 'trouble') {
    const at = saidAt(new URLSearchParams(search).get('at'), place.now)
    if (at === null) return <FirstScreen next={next} number={number} />
    return (
      <TroubleList place={place} at={at}>
        <Remembered place={place} clearanceHref={place.home ? `${base}/clearance` : '/check/cleared'} />
        <GoOn base={base} />
      </TroubleList>
    )
  }
  if (rest === 'brief') return <PhoneBrief place={place} search={search} />
  if (rest === 'watch') return <WatchView place={place} search={search} />
  const flow = findFlow(rest)
  if (!flow) return <FirstScreen next={next} number={number} />
  return (
    <>
      <GuideScreen flow={flow} search={search} place={place} />
      <RememberWalk href={`${base}/${rest}${search}`} />
    </>
  )
}
