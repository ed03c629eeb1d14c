import Link from 'next/link'

/** What a person is told whose link opens nothing, or who tried too many. */
export function LinkEnded({ isSlow = false }: { isSlow?: boolean }) {
  return (
    <main id="main" tabIndex={-1}>
      <h1>This link opens nothing</h1>
      {isSlow ? (
        <p className="lead">
          Several links from here opened nothing, so we wait now. Try again in 15 minutes, with the link copied whole.
        </p>
      ) : (
        <p className="lead">
          It may have ended, been taken back, or been copied only in part. Ask whoever gave it to you for a new one.
        </p>
      )}
      <p>What needs no link works all the same:</p>
      <p className="buttons">
        <Link className="button main" href="/check">
          No heat? Check it
        </Link>
        <Link className="button" href="/find">
          Find the filter
        </Link>
      </p>
    </main>
  )
}
