'use client'

import { useEffect, useState } from 'react'

/** Prints the page. Without scripts it is not there: the browser's own menu prints. */
export function PrintButton() {
  const [canPrint, setCanPrint] = useState(false)
  useEffect(() => setCanPrint(true), [])
  if (!canPrint) return null
  return (
    <button type="button" onClick={() => window.print()}>
      Print it
    </button>
  )
}
