import Link from 'next/link'

export default function NotFound() {
  return (
    <main id="main" tabIndex={-1}>
      <h1>There is nothing here</h1>
      <p>
        The address may be mistyped, or what was here has been removed. <Link href="/">Go to the first page.</Link>
      </p>
    </main>
  )
}
