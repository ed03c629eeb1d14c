'use client'

import { sayUnavailable } from '@/lib/data/unavailable'
import { DatabaseTrouble } from './database-page'

export default function PageError({ error }: { error: Error & { digest?: string } }) {
  const again = (
    <p>
      <button type="button" onClick={() => location.reload()}>
        Try again
      </button>
    </p>
  )
  const unavailable = sayUnavailable(error.digest)
  if (unavailable) return <DatabaseTrouble say={unavailable}>{again}</DatabaseTrouble>
  return (
    <main id="main" tabIndex={-1}>
      <h1>That didn’t work</h1>
      <p>Something went wrong on our side. What was saved before is safe; what you just sent may not have been kept.</p>
      {again}
      <p>
        If it goes on, tell whoever runs this installation{error.digest ? `, with the number ${error.digest}` : ''}.
      </p>
    </main>
  )
}
