'use client'

import { useEffect, useRef, useState } from 'react'

/** A link or a token to be passed on, whole and selectable; a button copies it where the browser lets us. */
export function CopyLink({ link, what = 'link' }: { link: string; what?: 'link' | 'token' }) {
  const [canCopy, setCanCopy] = useState(false)
  const [said, setSaid] = useState('')
  const field = useRef<HTMLInputElement>(null)
  // The clipboard is there only with scripts, and over plain http only on this machine.
  useEffect(() => setCanCopy('clipboard' in navigator), [])

  async function copy() {
    try {
      await navigator.clipboard.writeText(link)
      setSaid('Copied.')
    } catch {
      field.current?.select()
      setSaid('The browser did not let us copy it. It is selected: copy it yourself.')
    }
  }

  return (
    <div className="copy-link">
      <input
        ref={field}
        type="text"
        readOnly
        value={link}
        aria-label={`The ${what}`}
        onFocus={(event) => event.target.select()}
      />
      {canCopy && (
        <button type="button" onClick={copy}>
          Copy the {what}
        </button>
      )}
      <span role="status">{said}</span>
    </div>
  )
}
