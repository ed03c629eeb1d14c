'use client'

import { type ReactNode, useActionState, useEffect, useRef } from 'react'
import { ErrorSummary } from '@/app/parts/error-summary'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import { plural } from '@/lib/core/day-words'
import { bringUnits, type Shown } from './actions'
import { ColumnTable } from './column-table'
import { PlaceChoice } from './place-choice'

interface ImportFormProps {
  columns: [string, string][]
  stations: [string, string][]
  zones: [string, string][]
  timeZone: string
  /** Shown with the first step only. */
  children: ReactNode
}

/** Chooses a file of units, shows what it would do and what is wrong, and keeps it only at the second button. */
export function ImportForm({ children, ...choices }: ImportFormProps) {
  const [answer, send, pending] = useActionState<Answer<Shown>, FormData>(bringUnits, NOT_SENT)
  const top = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (answer !== NOT_SENT) top.current?.focus()
  }, [answer])
  const { done } = answer
  return (
    <>
      <form action={send} noValidate>
        <div ref={top} tabIndex={-1} className="answer">
          <ErrorSummary faults={answer.faults.map(({ path, say }) => (path ? { field: path, say } : { say }))} />
          {done?.say && <p className="notice">{done.say}</p>}
        </div>
        {done ? <Preview shown={done} pending={pending} {...choices} /> : <Choose pending={pending} />}
      </form>
      {!done && children}
    </>
  )
}

function Choose({ pending }: { pending: boolean }) {
  return (
    <>
      <p className="lead">
        A table with one row for each unit: its building, the unit, and as much of the rest as you know. You see first
        what it would do; nothing is kept before you say so.
      </p>
      <FileField label="The file" />
      <button type="submit" className="main" aria-disabled={pending || undefined}>
        {pending ? 'Reading…' : 'Show what is in it'}
      </button>
      {pending && <progress aria-label="Reading the file" />}
    </>
  )
}

function FileField({ label }: { label: string }) {
  return (
    <div className="field">
      <label className="label" htmlFor="file">
        {label}
      </label>
      <p className="hint" id="file-hint">
        CSV from any spreadsheet, in any encoding, at most 4 MB or 20,000 rows.
      </p>
      <input id="file" name="file" type="file" accept=".csv,.tsv,.txt,text/csv" aria-describedby="file-hint" />
    </div>
  )
}

type PreviewProps = Omit<ImportFormProps, 'children'> & { shown: Shown; pending: boolean }

function Preview({ shown, pending, columns, stations, zones, timeZone }: PreviewProps) {
  const { counts, faults } = shown
  const isWhole = faults.length === 0
  const nothing = counts.fresh + counts.changed === 0
  return (
    <>
      <input type="hidden" name="text" value={shown.text} />
      <input type="hidden" name="columns" value={shown.headings.length} />
      <p className="lead">
        <strong>Nothing is kept yet.</strong> {plural(shown.rows, 'row')}: {plural(counts.fresh, 'new unit')},{' '}
        {counts.changed} that change, {counts.same} that stay as they are.
      </p>
      {!isWhole && <Faults shown={shown} />}
      {(shown.needsPlace || shown.place !== '') && (
        <PlaceChoice stations={stations} zones={zones} place={shown.place} timeZone={shown.timeZone || timeZone} />
      )}
      <div className="buttons">
        {isWhole && !nothing && (
          <button type="submit" className="main" name="do" value="keep" aria-disabled={pending || undefined}>
            {pending ? 'Working…' : `Keep ${plural(counts.fresh + counts.changed, 'unit')}`}
          </button>
        )}
        <a className="button" href="/homes/import">
          {nothing && isWhole ? 'Done: nothing to change' : 'Another file'}
        </a>
      </div>
      {pending && <progress aria-label={`Working through ${shown.rows} rows`} />}
      <Lines shown={shown} />
      <ColumnTable shown={shown} columns={columns} />
      <button type="submit" name="do" value="show" aria-disabled={pending || undefined}>
        Read it again with these columns
      </button>
    </>
  )
}

function Faults({ shown: { faults, moreFaults } }: { shown: Shown }) {
  return (
    <section className="faults" aria-labelledby="faults">
      <h2 id="faults">
        {faults.length === 1 ? 'One thing to put right' : `${faults.length + moreFaults} things to put right`}
      </h2>
      <ul>
        {faults.map(({ say, where }) => (
          <li key={say}>
            {where && <strong>{where}: </strong>}
            {say}
          </li>
        ))}
        {moreFaults > 0 && <li>And {moreFaults} more, shown once these are put right.</li>}
      </ul>
      <p>Put them right in your spreadsheet and choose the file again, or choose below what each column is.</p>
      <FileField label="The file, put right" />
      <button type="submit">Read this file instead</button>
    </section>
  )
}

function Lines({ shown: { lines, moreLines } }: { shown: Shown }) {
  if (lines.length === 0) return null
  return (
    <section aria-labelledby="lines">
      <h2 id="lines">What it would do</h2>
      <p className="hint">
        What a row does not say of a new unit is taken as the cautious case, and named in its plan: two people, no pets,
        a gas burner that wants its yearly service, let to others.
      </p>
      <ul className="lines sheet-lines">
        {lines.map(({ line, building, unit, says }) => (
          <li key={line}>
            <strong>
              {building}, {unit}
            </strong>
            : {says} <span className="hint">(row {line})</span>
          </li>
        ))}
      </ul>
      {moreLines > 0 && <p>And {plural(moreLines, 'more unit')}.</p>}
    </section>
  )
}
