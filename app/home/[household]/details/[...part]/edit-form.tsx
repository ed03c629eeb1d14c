'use client'

import Link from 'next/link'
import { useActionState } from 'react'
import { FaultList } from '@/app/parts/fault-list'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import { type Edited, editDetails } from '../actions'
import { EditQuestions } from './edit-questions'
import type { EditScreen } from './edit-screen'
import { Preview } from './preview'

interface EditFormProps {
  household: string
  revision: number
  group: string
  subject: string
  screen: EditScreen
}

/** A part's questions; then what the change does to the dates; then it is saved. Works the same without scripts. */
export function EditForm({ household, revision, group, subject, screen }: EditFormProps) {
  const [answer, send, isSending] = useActionState<Answer<Edited>, FormData>(editDetails, NOT_SENT)
  const { done, faults } = answer
  const typed = faults.length > 0 ? answer.typed : (done?.typed ?? screen.typed)
  const isPreview = done?.kind === 'preview' || done?.kind === 'conflict'
  const seen = done?.revision ?? answer.typed.revision?.[0] ?? revision
  return (
    <form action={send} noValidate>
      <FaultList faults={faults} />
      <input type="hidden" name="household" value={household} />
      <input type="hidden" name="revision" value={seen} />
      <input type="hidden" name="group" value={group} />
      <input type="hidden" name="subject" value={subject} />
      {isPreview ? (
        <Preview edited={done} removal={screen.removal} />
      ) : (
        <button type="submit" name="button" value="preview" className="first" tabIndex={-1} aria-hidden="true">
          Show what it changes
        </button>
      )}
      {!isPreview && (
        <EditQuestions
          key={JSON.stringify([typed, faults, done])}
          screen={screen}
          group={{ typed, faults }}
          done={done}
        />
      )}
      <div className="buttons">
        {isPreview ? (
          <>
            <button type="submit" name="button" value="save" className="main" disabled={isSending}>
              {done.remove ? 'Take it out' : 'Save'}
            </button>
            <button type="submit" name="button" value="again">
              {done.remove ? 'Keep it' : 'Change it again'}
            </button>
          </>
        ) : (
          <>
            <button type="submit" name="button" value="preview" className="main" disabled={isSending}>
              Show what it changes
            </button>
            {screen.removal !== null && (
              <button type="submit" name="button" value="remove">
                Take it out
              </button>
            )}
          </>
        )}
        <Link className="button" href={`/home/${household}/details`}>
          Leave it as it was
        </Link>
      </div>
    </form>
  )
}
