import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { type AccountViewer, currentViewer } from './sign-in'

/** Who looks at this page, or null. */
export async function findViewer(): Promise<AccountViewer | null> {
  return currentViewer(await headers())
}

/** Who looks at this page; whoever is signed out is sent to sign in, and comes back to `path` after. */
export async function requireViewer(path: string): Promise<AccountViewer> {
  return (await findViewer()) ?? redirect(`/sign-in?next=${encodeURIComponent(path)}`)
}
