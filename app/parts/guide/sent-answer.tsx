import type { ReactNode } from 'react'
import { CHANGED, encodeWalk, type Walk } from '@/lib/guide/address'
import { type GuidePlace, walkHref } from '@/lib/guide/place'
import { withAnswer } from '@/lib/guide/replay'
import type { GuideNode } from '@/lib/guide/types'

/** An answer that is written down: a start, a trip, a hazard. */
export interface SentAnswer {
  place: GuidePlace
  walk: Walk
  node: GuideNode
  answer: string
}

/** Where an answer leads, and where an offline phone goes on by itself. */
export function answerHref({ place, walk, node, answer }: SentAnswer): string {
  return walkHref(place, withAnswer(walk, node, answer, place.now))
}

export function changedAnswer(place: GuidePlace, walk: Walk, node: GuideNode): SentAnswer {
  return { place, walk, node, answer: CHANGED }
}

interface SendFormProps {
  sent: SentAnswer
  /** What else the answer says, such as which filter. */
  more?: Record<string, string>
  children: ReactNode
}

/** A plain form, so that it works without scripts, and a service worker can keep it while the network is gone. */
export function SendForm({ sent, more = {}, children }: SendFormProps) {
  const { place, walk, node, answer } = sent
  const fields: Record<string, string> = {
    home: place.home?.id ?? '',
    system: place.systemId ?? '',
    walk: encodeWalk(walk),
    node: node.id,
    answer,
    next: answerHref(sent),
    ...more,
  }
  return (
    <form method="post" action="/check/answer">
      {Object.entries(fields).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {children}
    </form>
  )
}
