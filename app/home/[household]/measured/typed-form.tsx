'use client'

import Link from 'next/link'
import { type ReactNode, useActionState } from 'react'
import type { GroupProps } from '@/app/describe/fields/group'
import { FaultList } from '@/app/parts/fault-list'
import { PlanChangeList } from '@/app/parts/plan-change-list'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import type { TypedAnswer } from './typed-answer'

interface TypedFormProps {
  household: string
  action: (state: Answer<TypedAnswer>, form: FormData) => Promise<Answer<TypedAnswer>>
  typed: Record<string, string[]>
  /** The questions, with so many rows. */
  children: (group: GroupProps, rows: number) => ReactNode
  /** Rows that are shown at least, and at most. */
  rows: { least: number; most: number }
  /** A field of each row, by which it is seen how many there are. */
  rowField: string
}

/** Questions in rows; then what they come to and what that does to the dates; then they are saved. The same without scripts. */
export function TypedForm({ household, action, typed: first, children, rows, rowField }: TypedFormProps) {
  const [answer, send, isSending] = useActionState<Answer<TypedAnswer>, FormData>(action, NOT_SENT)
  const { done, faults } = answer
  const typed = faults.length > 0 ? answer.typed : (done?.typed ?? first)
  return (
    <form action={send} noValidate>
      <FaultList faults={faults} />
      <input type="hidden" name="household" value={household} />
      {done?.kind === 'preview' ? (
        <Preview done={done} isSending={isSending} />
      ) : (
        <>
          <button type="submit" name="button" value="preview" className="first" tabIndex={-1} aria-hidden="true">
            Show what it comes to
          </button>
          <div key={JSON.stringify([typed, faults])}>
            {children({ typed, faults }, Math.min(rows.most, rowsOf(typed, rowField, rows.least) + (done?.more ?? 0)))}
          </div>
          <div className="buttons">
            <button type="submit" name="button" value="preview" className="main" disabled={isSending}>
              Show what it comes to
            </button>
            <button type="submit" name="button" value="more">
              More rows
            </button>
            <Link className="button" href={`/home/${household}/measured`}>
              Leave it
            </Link>
          </div>
        </>
      )}
    </form>
  )
}

/** As many rows as hold something, and one to go on in. */
function rowsOf(typed: Record<string, string[]>, field: string, least: number): number {
  const filled = Object.entries(typed).flatMap(([name, [text]]) => {
    const [of, row] = name.split(/-(?=\d+$)/)
    return of === field && text ? [Number(row) + 2] : []
  })
  return Math.max(least, ...filled)
}

function Preview({ done, isSending }: { done: TypedAnswer; isSending: boolean }) {
  const { lines, notes, changes, typed } = done
  return (
    <>
      <h2>What it comes to</h2>
      <ul className="changes">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      <h2>{changes.length === 0 ? 'No date moves' : 'What it does to the dates'}</h2>
      <PlanChangeList changes={changes} />
      {Object.entries(typed).flatMap(([name, values]) =>
        values.map((value) => <input key={name} type="hidden" name={name} value={value} />),
      )}
      <div className="buttons">
        <button type="submit" name="button" value="save" className="main" disabled={isSending}>
          Save
        </button>
        <button type="submit" name="button" value="again">
          Change it again
        </button>
      </div>
    </>
  )
}
