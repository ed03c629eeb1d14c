'use client'

import type { FormEvent } from 'react'
import { now } from '@/lib/clock'
import { finderStart } from '@/lib/guide/finder-start'
import { phoneCookie, phoneCookieIn, readPhoneMemory } from '@/lib/guide/phone-memory'

interface TurnedOnFormProps {
  home: string
  began: string
  /** The card's own address. */
  back: string
}

/** Asks how it started again: a start that goes wrong is the one start, and the guide has to know of it. */
export function TurnedOnForm({ home, began, back }: TurnedOnFormProps) {
  function remember(event: FormEvent<HTMLFormElement>) {
    if (navigator.onLine) return
    // Without network the phone remembers it, and what it keeps of the guide leads on.
    event.preventDefault()
    const button = (event.nativeEvent as SubmitEvent).submitter as HTMLButtonElement | null
    const answer = button?.value === 'as-always' ? 'as-always' : 'not-as-always'
    const before = phoneCookieIn(document.cookie)
    const minute = Math.floor(now().getTime() / 60_000)
    const events = finderStart({ answer, began: Number(began), minute }, readPhoneMemory(before))
    // biome-ignore lint/suspicious/noDocumentCookie: the guide reads this very cookie, on the server too.
    if (events.length > 0) document.cookie = phoneCookie(before, events, window.location.protocol === 'https:')
    window.location.assign(answer === 'as-always' ? `${back}&on=1` : '/check')
  }
  return (
    <form action="/find/turned-on" method="post" onSubmit={remember} className="no-print">
      <input type="hidden" name="home" value={home} />
      <input type="hidden" name="t" value={began} />
      <input type="hidden" name="back" value={back} />
      <div className="buttons">
        <button type="submit" name="answer" value="as-always">
          It started as always
        </button>
        <button type="submit" name="answer" value="not-as-always">
          It did not
        </button>
      </div>
    </form>
  )
}
