'use client'

import { useEffect, useState } from 'react'

/** Buttons that need scripts: they appear only where they work. */
export function CopyAndPrint({ text }: { text: string }) {
  const [ready, setReady] = useState(false)
  const [said, setSaid] = useState('')
  useEffect(() => setReady(true), [])
  if (!ready) return null
  async function copy() {
    try {
      await navigator.clipboard.writeText(text)
      setSaid('Copied.')
    } catch {
      setSaid('The browser did not let us copy it. Select the text of the page instead.')
    }
  }
  return (
    <div className="buttons no-print">
      <button type="button" onClick={() => window.print()}>
        Print it
      </button>
      <button type="button" onClick={copy}>
        Copy the text
      </button>
      <span role="status">{said}</span>
    </div>
  )
}
