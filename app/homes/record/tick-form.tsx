'use client'

import { createContext, type ReactNode, useActionState, useContext, useEffect, useRef } from 'react'
import { ErrorSummary } from '@/app/parts/error-summary'
import { SubmitButton } from '@/app/parts/submit-button'
import { TextField } from '@/app/parts/text-field'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import type { Day } from '@/lib/core/day'
import type { Fault } from '@/lib/core/fault'
import { recordTicked, undoTicked } from './actions'
import type { Recorded } from './said'

const Answered = createContext<Answer<Recorded>>(NOT_SENT)

interface TickFormProps {
  /** Made with the page, so that the same page sent twice is recorded once. */
  once: string
  /** The day that stands in the form at first, and the last that may. */
  on: Day
  today: Day
  children: ReactNode
}

/** A list of boxes to tick and the day it was done; says what was recorded, by whom before, and how to take it back. */
export function TickForm({ once, on, today, children }: TickFormProps) {
  const [answer, send] = useActionState(recordTicked, NOT_SENT)
  const [undone, takeBack] = useActionState(undoTicked, NOT_SENT)
  const { faults, typed, done } = answer
  // Without scripts the page knows of the last thing sent only; with them, of both.
  const isUndone = undone.done !== null && (done === null || undone.done.entries === done.undo)
  const says = isUndone ? [undone.done?.say ?? ''] : (done?.say ?? [])
  const top = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (answer !== NOT_SENT || undone !== NOT_SENT) top.current?.focus()
  }, [answer, undone])
  return (
    <Answered value={answer}>
      <div ref={top} tabIndex={-1} className="answer">
        <ErrorSummary faults={[...undone.faults, ...faults].map(toField)} />
        {says.length > 0 && (
          <div className="notice" role="status">
            {says.map((line) => (
              <p key={line}>{line}</p>
            ))}
            {done && !isUndone && done.undo !== '' && (
              <form action={takeBack}>
                <input type="hidden" name="entries" value={done.undo} />
                <SubmitButton>Take it all back</SubmitButton>
              </form>
            )}
          </div>
        )}
      </div>
      <form action={send} noValidate className="tick-form">
        <input type="hidden" name="once" value={once} />
        {children}
        <div className="tick-send no-print">
          <TextField
            id="on"
            type="date"
            label="The day it was done"
            defaultValue={typed.on?.[0] ?? on}
            max={today}
            fault={faults.find(({ path }) => path === 'on')?.say}
          />
          <SubmitButton kind="main">Record what is ticked</SubmitButton>
        </div>
      </form>
    </Answered>
  )
}

function toField({ path, say }: Fault) {
  return path ? { field: path, say } : { say }
}

interface TickBoxProps {
  value: string
  ticked: boolean
  /** The first box of the form has an id, so that a fault leads to it. */
  first?: boolean
  children: ReactNode
}

/** One box: what it says is large enough to tap, and on paper large enough to tick. */
export function TickBox({ value, ticked, first, children }: TickBoxProps) {
  const { typed, faults } = useContext(Answered)
  const chosen = faults.length > 0 ? (typed.did ?? []).includes(value) : ticked
  return (
    <label className="tick">
      {/* A new answer makes the box anew: the browser's own reset would bring back how it stood at first. */}
      <input
        key={`${faults.length > 0} ${chosen}`}
        id={first ? 'did' : undefined}
        type="checkbox"
        name="did"
        value={value}
        defaultChecked={chosen}
      />
      <span>{children}</span>
    </label>
  )
}
