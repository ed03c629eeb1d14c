'use client'

import { createContext, type ReactNode, useActionState, useContext, useEffect, useRef } from 'react'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import { CopyLink } from './copy-link'
import { ErrorSummary } from './error-summary'

/** What a form says when it was done: a sentence, and a link or a token that is shown this once. */
export interface Said {
  say: string
  link?: string
  token?: string
}

export type Done = Said | null

/** An action made by the wrapper of lib/access, as a form takes it. */
export type FormAction = (before: Answer<Done>, form: FormData) => Promise<Answer<Done>>

const Answered = createContext<{ answer: Answer<Done>; pending: boolean }>({ answer: NOT_SENT, pending: false })

/** What the form's action answered, and whether it is under way: for what stands inside the form. */
export function useAnswer(): { answer: Answer<Done>; pending: boolean } {
  return useContext(Answered)
}

interface ActionFormProps {
  action: FormAction
  /** Sent along unseen. */
  hidden?: Record<string, string>
  className?: string
  children: ReactNode
}

/** A form that says all its faults at its top, keeps what was typed, and works the same without scripts. */
export function ActionForm({ action, hidden = {}, className, children }: ActionFormProps) {
  const [answer, send, pending] = useActionState(action, NOT_SENT)
  const top = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (answer.faults.length > 0 || answer.done) top.current?.focus()
  }, [answer])
  return (
    <Answered value={{ answer, pending }}>
      <form action={send} className={className} noValidate>
        <div ref={top} tabIndex={-1} className="answer">
          <ErrorSummary faults={answer.faults.map(({ path, say }) => (path ? { field: path, say } : { say }))} />
          {answer.done && (
            <div className="notice" role="status">
              <p>{answer.done.say}</p>
              {answer.done.link && <CopyLink link={answer.done.link} />}
              {answer.done.token && <CopyLink link={answer.done.token} what="token" />}
            </div>
          )}
        </div>
        {Object.entries(hidden).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        {children}
      </form>
    </Answered>
  )
}
