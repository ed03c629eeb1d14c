'use client'

import dynamic from 'next/dynamic'
import Link from 'next/link'
import { useActionState, useEffect, useRef, useState } from 'react'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import { plural } from '@/lib/core/day-words'
import type { Fault } from '@/lib/core/fault'
import { WAY_FOR_LARGER } from '@/lib/forms/read-text'
import { keepBrought, type Shown, showBrought } from './actions'
import { FileField } from './file-field'

// Drawing up needs the model's words and tables: nobody waits for them who has not sent a file yet.
const BroughtSheets = dynamic(() => import('./brought-sheets').then((module) => module.BroughtSheets))

// The most that a form may hold is 12 MB, and what is around the file counts too.
const MOST_BYTES = 11_500_000
const TOO_LARGE = `The file is larger than 11 MB, the most that can be sent: ${WAY_FOR_LARGER}.`

/** Brings a household file, dropped, chosen or pasted, and draws it up; keeping it is a second button. */
export function BringForm({ signedIn }: { signedIn: boolean }) {
  const [shown, show, isReading] = useActionState<Answer<Shown>, FormData>(showBrought, NOT_SENT)
  const [kept, keep, isKeeping] = useActionState<Answer, FormData>(keepBrought, NOT_SENT)
  const [tooLarge, setTooLarge] = useState<Fault[]>([])
  const faults = [tooLarge, kept.faults, shown.faults].find((some) => some.length > 0) ?? []
  const sent = useRef<File | null>(null)
  const [isHydrated, setHydrated] = useState(false)
  // Without scripts the form's own action is the server's; with them the file is held for the second button.
  useEffect(() => setHydrated(true), [])
  const { done } = shown
  if (done) return <Sheets shown={done} signedIn={signedIn} keep={keep} faults={kept.faults} archive={sent} />
  /** Sends what can be sent at all: a server's answer to more than that is no page. */
  function sending(send: (form: FormData) => void) {
    return (form: FormData) => {
      const file = form.get('file')
      sent.current = file instanceof File ? file : null
      const isTooLarge = (sent.current?.size ?? 0) > MOST_BYTES
      setTooLarge(isTooLarge ? [{ path: 'file', say: TOO_LARGE }] : [])
      if (!isTooLarge) send(form)
    }
  }
  return (
    <form action={isHydrated ? sending(show) : show} className="bring">
      <h1>Bring a household file</h1>
      <p className="lead">
        A household file describes a home, its equipment and what was done. You see what is due and why; nothing is
        stored unless you keep it.
      </p>
      <FileFaults faults={faults} />
      <FileField />
      <div className="field">
        <label className="label" htmlFor="text">
          Or paste what stands in it
        </label>
        <textarea
          id="text"
          name="text"
          rows={8}
          spellCheck={false}
          defaultValue={shown.typed.text?.[0] ?? kept.typed.text?.[0]}
        />
      </div>
      <div className="buttons">
        <button type="submit" className="main" disabled={isReading}>
          {isReading ? 'Reading…' : 'Show what is due'}
        </button>
        {/* Of two actions in one form, an answer without scripts finds its way back only to the first. */}
        {signedIn && isHydrated && (
          <button type="submit" formAction={sending(keep)} disabled={isKeeping}>
            {isKeeping ? 'Keeping…' : 'Keep it in my account'}
          </button>
        )}
      </div>
      <div className="buttons">
        <Link href="/sample">No file? Look around a sample home</Link>
      </div>
    </form>
  )
}

/** Every fault with the place in the file where it stands. */
function FileFaults({ faults }: { faults: Fault[] }) {
  if (faults.length === 0) return null
  return (
    <section className="faults" role="alert" aria-labelledby="faults">
      <h2 id="faults">{faults.length === 1 ? 'One thing to put right' : `${faults.length} things to put right`}</h2>
      <ul>
        {faults.map(({ path, say }) => (
          <li key={`${path} ${say}`}>
            {path && path !== 'file' && (
              <>
                <code>{path}</code>:{' '}
              </>
            )}
            {say}
          </li>
        ))}
      </ul>
    </section>
  )
}

interface SheetsProps {
  shown: Shown
  signedIn: boolean
  keep: (form: FormData) => void
  faults: Fault[]
  /** The archive that was sent, where scripts hold it. */
  archive: { current: File | null }
}

function Sheets({ shown, signedIn, keep, faults, archive }: SheetsProps) {
  return (
    <>
      <form action={keep} className="notice no-print">
        <FileFaults faults={faults} />
        <p>
          <strong>Nothing of this is stored.</strong> It is gone when you leave this page.{' '}
          {!signedIn && (
            <>
              To keep it, <Link href="/sign-in?next=/bring">sign in</Link> and bring the file again.
            </>
          )}
        </p>
        <input type="hidden" name="text" value={shown.text} />
        {signedIn && shown.photos > 0 && <ArchiveAgain photos={shown.photos} archive={archive} />}
        <div className="buttons">
          {signedIn && (
            <button type="submit" className="main">
              Keep it in my account
            </button>
          )}
          <a className="button" href="/bring">
            Bring another file
          </a>
        </div>
      </form>
      <BroughtSheets sheets={shown.sheets} />
      {shown.more > 0 && (
        <p className="notice">
          {plural(shown.more, 'more home')} of this file {shown.more === 1 ? 'is' : 'are'} not drawn up here: keep the
          file in an account to see every home.
        </p>
      )}
    </>
  )
}

/** Photos are too much to be carried along unseen: the archive is sent once more to keep them. */
function ArchiveAgain({ photos, archive }: { photos: number; archive: { current: File | null } }) {
  const input = useRef<HTMLInputElement>(null)
  useEffect(() => {
    if (!archive.current || !input.current) return
    const list = new DataTransfer()
    list.items.add(archive.current)
    input.current.files = list.files
  }, [archive])
  return (
    <div className="field">
      <label className="label" htmlFor="file">
        The archive, for its {plural(photos, 'photo')}
      </label>
      <p className="hint" id="file-hint">
        Left empty, the home is kept without them.
      </p>
      <input ref={input} id="file" name="file" type="file" accept=".zip,application/zip" aria-describedby="file-hint" />
    </div>
  )
}
