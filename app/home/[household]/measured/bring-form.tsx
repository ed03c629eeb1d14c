'use client'

import { type FormEvent, useRef, useState } from 'react'
import { BRING_FAULTS } from './bring-faults'

// As the server's own limit; here it spares the way.
const MOST_BYTES = 60_000_000

/**
 * Sends an export as a plain form does. Where scripts run it shows how far the upload is, and a file that is too large
 * is refused before any of it is sent.
 */
export function BringForm({ household }: { household: string }) {
  const [sent, setSent] = useState<number | null>(null)
  const [say, setSay] = useState<string | null>(null)
  const fault = useRef<HTMLParagraphElement>(null)

  function refuse(why: string): void {
    setSent(null)
    setSay(why)
    setTimeout(() => fault.current?.focus(), 0)
  }

  function submit(event: FormEvent<HTMLFormElement>): void {
    event.preventDefault()
    const form = event.currentTarget
    const file = new FormData(form).get('file')
    if (!(file instanceof File) || file.size === 0) {
      refuse(BRING_FAULTS.empty)
      return
    }
    if (file.size > MOST_BYTES) {
      refuse(BRING_FAULTS['too-large'])
      return
    }
    setSay(null)
    setSent(0)
    const request = new XMLHttpRequest()
    request.open('POST', form.action)
    request.setRequestHeader('accept', 'application/json')
    request.upload.onprogress = ({ loaded, total }) => setSent(total > 0 ? loaded / total : 0)
    request.onerror = () => refuse(BRING_FAULTS['cut-off'])
    request.onload = () => {
      const answer = answerIn(request.responseText)
      if (answer.to && !answer.say) location.assign(answer.to)
      else refuse(answer.say ?? answer.error ?? BRING_FAULTS['cut-off'])
    }
    request.send(new FormData(form))
  }

  return (
    <form action={`/home/${household}/measured/bring`} method="post" encType="multipart/form-data" onSubmit={submit}>
      {say && (
        <p className="fault" role="alert" ref={fault} tabIndex={-1}>
          {say}
        </p>
      )}
      <div className="field">
        <label className="label" htmlFor="file">
          The file
        </label>
        <p className="hint" id="file-hint">
          A table as CSV or text, up to 60 MB: with any columns, any way to write dates, any encoding.
        </p>
        <input
          id="file"
          name="file"
          type="file"
          accept=".csv,.tsv,.txt,text/csv,text/plain"
          required
          aria-describedby="file-hint"
        />
      </div>
      <button type="submit" className="main" disabled={sent !== null}>
        Show what is in it
      </button>
      <p role="status">
        {sent !== null &&
          (sent < 1 ? `Sending: ${Math.round(sent * 100)} %` : 'Reading it. A long file takes some seconds.')}
      </p>
      {sent !== null && <progress aria-label="The upload" {...(sent < 1 ? { value: sent, max: 1 } : {})} />}
    </form>
  )
}

function answerIn(text: string): { to?: string; say?: string | null; error?: string } {
  try {
    return JSON.parse(text)
  } catch {
    return {}
  }
}
