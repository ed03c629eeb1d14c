import type { Metadata } from 'next'
import Link from 'next/link'

export const metadata: Metadata = { title: 'Your account is deleted' }

export default function Page() {
  return (
    <main id="main" tabIndex={-1}>
      <h1>Your account is deleted</h1>
      <p className="lead">Everything that was listed is gone from here. You are signed out.</p>
      <p>
        A household file that you saved can be{' '}
        <Link href="/bring" prefetch={false}>
          brought back
        </Link>{' '}
        into another account.
      </p>
      <p>Backups that whoever hosts this made before still hold it until they are thrown away.</p>
    </main>
  )
}
