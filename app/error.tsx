'use client'

export default function PageError({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  return (
    <main>
      <h1>That didn’t work</h1>
      <p>Something went wrong on our side. What was saved before is safe; what you just sent may not have been kept.</p>
      <p>
        <button type="button" onClick={reset}>
          Try again
        </button>
      </p>
      <p>
        If it goes on, tell whoever runs this installation{error.digest ? `, with the number ${error.digest}` : ''}.
      </p>
    </main>
  )
}
