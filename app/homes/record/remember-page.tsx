'use client'

import { useEffect } from 'react'

/** Asks the worker to keep a page as it is now, for when the network is gone. */
export function keepPage(href: string): void {
  navigator.serviceWorker?.ready.then(({ active }) => active?.postMessage({ keep: href })).catch(() => {})
}

/** Keeps this page on the phone. What is kept goes when nobody is signed in any more. */
export function RememberPage() {
  useEffect(() => {
    // Kept without network it would be asked for in vain; what is kept already stays.
    if (navigator.onLine) keepPage(location.href)
  }, [])
  return null
}
