'use client'

import {
  createContext,
  type FormEvent,
  type ReactNode,
  useActionState,
  useContext,
  useEffect,
  useRef,
  useState,
} from 'react'
import { ErrorSummary } from '@/app/parts/error-summary'
import { SubmitButton } from '@/app/parts/submit-button'
import { TextField } from '@/app/parts/text-field'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import type { Day } from '@/lib/core/day'
import type { Fault } from '@/lib/core/fault'
import { recordTicked, undoTicked } from './actions'
import { KeptList, useKept } from './kept-list'
import { keepTick, newOnce, PATIENCE_MS } from './kept-ticks'
import type { Recorded } from './said'

const Answered = createContext<Answer<Recorded>>(NOT_SENT)
/** The boxes whose records this phone keeps until they are sent. */
const Kept = createContext<ReadonlySet<string>>(new Set())

interface TickFormProps {
  /** Made with the page, so that the same page sent twice is recorded once. */
  once: string
  /** Whose records they are, while this phone keeps them. */
  account: string
  /** The day that stands in the form at first, and the last that may. */
  on: Day
  today: Day
  children: ReactNode
}

/** A list of boxes to tick and the day it was done; says what was recorded, by whom before, and how to take it back. */
export function TickForm({ once, account, on, today, children }: TickFormProps) {
  const [posted, send] = useActionState(recordTicked, NOT_SENT)
  const [answered, setAnswered] = useState<Answer<Recorded> | null>(null)
  const [pending, setPending] = useState(false)
  const answer = answered ?? posted
  const [undone, takeBack] = useActionState(undoTicked, NOT_SENT)
  const { faults, typed, done } = answer
  // Without scripts the page knows of the last thing sent only; with them, of both.
  const isUndone = undone.done !== null && (done === null || undone.done.entries === done.undo)
  const kept = new Set(useKept(account).map(({ did }) => did))
  const says = isUndone ? [undone.done?.say ?? ''] : (done?.say ?? [])
  const top = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (answer !== NOT_SENT || undone !== NOT_SENT) top.current?.focus()
  }, [answer, undone])

  // With scripts the form is sent from here, so that what does not get through is kept instead of lost.
  async function record(event: FormEvent<HTMLFormElement>) {
    event.preventDefault()
    if (pending) return
    setPending(true)
    const form = new FormData(event.currentTarget)
    const words = wordsOf(event.currentTarget)
    form.set('once', newOnce())
    setAnswered(await sendOrKeep(form, words, account))
    setPending(false)
  }

  return (
    <Answered value={answer}>
      <div ref={top} tabIndex={-1} className="answer">
        <KeptList account={account} />
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
      <form action={send} onSubmit={record} noValidate className="tick-form">
        <input type="hidden" name="once" value={once} />
        <Kept value={kept}>{children}</Kept>
        <div className="tick-send no-print">
          <TextField
            id="on"
            type="date"
            label="The day it was done"
            defaultValue={typed.on?.[0] ?? on}
            max={today}
            fault={faults.find(({ path }) => path === 'on')?.say}
          />
          <SubmitButton kind="main">{pending ? 'Recording…' : 'Record what is ticked'}</SubmitButton>
        </div>
      </form>
    </Answered>
  )
}

/** What each ticked box is about, by its value. */
function wordsOf(form: HTMLFormElement): Map<string, string> {
  const boxes = form.querySelectorAll<HTMLInputElement>('input[name=did]:checked')
  return new Map([...boxes].map(({ value, dataset }) => [value, dataset.what ?? '']))
}

/** Sends a form; where the network does not carry it, every ticked thing is kept on this phone under the same key. */
async function sendOrKeep(form: FormData, words: Map<string, string>, account: string): Promise<Answer<Recorded>> {
  try {
    if (!navigator.onLine) throw new Error('no network')
    const late = new Promise<never>((_, reject) => setTimeout(() => reject(new Error('too slow')), PATIENCE_MS))
    return await Promise.race([recordTicked(NOT_SENT, form), late])
  } catch {
    const on = String(form.get('on'))
    const typed = { did: [...words.keys()], on: [on] }
    const refuse = (path: string, say: string) => ({ faults: [{ path, say }], typed, done: null })
    if (words.size === 0) return refuse('did', 'Tick what was done.')
    if (!/^\d{4}-\d{2}-\d{2}$/.test(on)) return refuse('on', 'Give the day it was done.')
    const once = String(form.get('once'))
    try {
      for (const [did, what] of words) keepTick({ once, account, did, on, what, fault: null })
    } catch {
      return refuse(
        '',
        'There is no network, and this phone keeps nothing. Leave this page open and press again later.',
      )
    }
    // The list of what is kept says the rest.
    return { faults: [], typed: {}, done: { say: [], undo: '' } }
  }
}

function toField({ path, say }: Fault) {
  return path ? { field: path, say } : { say }
}

interface TickBoxProps {
  value: string
  /** The home and the thing in words, for where this phone keeps it. */
  what: string
  ticked: boolean
  /** The first box of the form has an id, so that a fault leads to it. */
  first?: boolean
  children: ReactNode
}

/** One box: what it says is large enough to tap, and on paper large enough to tick. */
export function TickBox({ value, what, ticked, first, children }: TickBoxProps) {
  const { typed, faults } = useContext(Answered)
  if (useContext(Kept).has(value)) {
    return (
      <p className="tick">
        <span>
          {children}
          <span className="hint">Kept on this phone, to be sent.</span>
        </span>
      </p>
    )
  }
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
        data-what={what}
        defaultChecked={chosen}
      />
      <span>{children}</span>
    </label>
  )
}
