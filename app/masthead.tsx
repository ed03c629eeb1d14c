import Link from 'next/link'
import { ForgetHomes } from '@/app/check/remember-home'
import { ActionForm } from '@/app/parts/action-form'
import { SubmitButton } from '@/app/parts/submit-button'
import { findViewer } from '@/lib/access/page'
import type { AccountViewer } from '@/lib/access/sign-in'
import { asUnavailable, DatabaseUnavailable } from '@/lib/data/unavailable'
import { signOutHere } from './session/actions'

/** The head of every page: the name, the way to help, and who is signed in. */
export async function Masthead() {
  const viewer = await whoever()
  return (
    <header className="masthead">
      <Link className="name" href="/">
        Plenum
      </Link>
      <Link href="/check" prefetch={false}>
        No heat? Smell gas?
      </Link>
      {viewer === 'nobody' && (
        <nav className="who nobody" aria-label="Account">
          <Link href="/sign-in">Sign in</Link>
          <ForgetHomes />
        </nav>
      )}
      {typeof viewer === 'object' && (
        <nav className="who" aria-label="Account">
          <span className="who-name">{viewer.name}</span>
          <Link href="/homes">Homes</Link>
          <Link href="/account">Account</Link>
          <ActionForm action={signOutHere}>
            <SubmitButton kind="quiet">Sign out</SubmitButton>
          </ActionForm>
        </nav>
      )}
    </header>
  )
}

// The head stands on pages that must open while the database does not answer, with the hazard text first.
async function whoever(): Promise<AccountViewer | 'nobody' | 'unknown'> {
  try {
    return (await findViewer()) ?? 'nobody'
  } catch (error) {
    if (asUnavailable(error) instanceof DatabaseUnavailable) return 'unknown'
    throw error
  }
}
