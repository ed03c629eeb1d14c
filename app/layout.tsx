import { connection } from 'next/server'
import type { ReactNode } from 'react'

export const metadata = { title: 'Plenum' }

export default async function Layout({ children }: { children: ReactNode }) {
  // Every page carries the nonce of its own request, so none may be frozen at build time.
  await connection()
  return (
    <html lang="en">
      <body>{children}</body>
    </html>
  )
}
