import Link from 'next/link'
import type { ReactNode } from 'react'
import { asUnavailable, DatabaseUnavailable } from '@/lib/data/unavailable'

/**
 * Wraps a page that asks the database: where it does not answer, the page says so. The error page of Next would need
 * scripts for that.
 */
export function databasePage<P>(render: (props: P) => Promise<ReactNode>): (props: P) => Promise<ReactNode> {
  return async function guarded(props) {
    try {
      return await render(props)
    } catch (error) {
      const known = asUnavailable(error)
      if (!(known instanceof DatabaseUnavailable)) throw error
      return <DatabaseTrouble say={known.message} />
    }
  }
}

/** What a person is told while the database does not answer. */
export function DatabaseTrouble({ say, children }: { say: string; children?: ReactNode }) {
  return (
    <main id="main" tabIndex={-1}>
      <h1>We can’t get at your home’s data</h1>
      <p className="lead">{say}</p>
      <p>Load this page again in a minute. If that doesn’t help, tell whoever hosts this what stands here.</p>
      {children}
      <h2>No heat, or a smell?</h2>
      <p>
        <Link href="/check">What to do now</Link> works without the data.
      </p>
    </main>
  )
}
