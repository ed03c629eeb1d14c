'use client'

import { useActionState } from 'react'
import { ErrorSummary } from '@/app/parts/error-summary'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import { endLink, shareByLink } from './actions'

interface ShareBriefProps {
  household: string
  brief: string
  /** In words, or null while no link shows it. */
  until: string | null
}

/** A link for the technician: it shows this page and nothing else, and ends by itself. */
export function ShareBrief({ household, brief, until }: ShareBriefProps) {
  const [shared, share, isSharing] = useActionState<Answer<string>, FormData>(shareByLink, NOT_SENT)
  const [ended, end, isEnding] = useActionState<Answer<string>, FormData>(endLink, NOT_SENT)
  const fields = (
    <>
      <input type="hidden" name="household" value={household} />
      <input type="hidden" name="brief" value={brief} />
    </>
  )
  return (
    <section className="no-print" aria-labelledby="share">
      <h2 id="share">Share it</h2>
      <ErrorSummary faults={[...shared.faults, ...ended.faults]} />
      {shared.done && (
        <div className="notice" role="status">
          <p>This link shows this page to whoever has it. It is shown once, here:</p>
          <input type="text" readOnly value={shared.done} aria-label="The link" />
        </div>
      )}
      {until !== null && <p>A link shows it until {until}.</p>}
      <div className="buttons">
        <form action={share}>
          {fields}
          <button type="submit" disabled={isSharing}>
            {until === null ? 'Make a link for two weeks' : 'Make a new link, and end the old one'}
          </button>
        </form>
        {until !== null && (
          <form action={end}>
            {fields}
            <button type="submit" className="quiet" disabled={isEnding}>
              End the link
            </button>
          </form>
        )}
      </div>
    </section>
  )
}
