import type { Metadata } from 'next'
import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { now } from '@/app/now'
import type { PageProps } from '@/app/page-props'
import { ActionForm } from '@/app/parts/action-form'
import { SubmitButton } from '@/app/parts/submit-button'
import { isNewAddressOpen } from '@/lib/outbound/address-change'
import { takeAddress } from './actions'

export const metadata: Metadata = { title: 'Your new e-mail', robots: { index: false } }

export default databasePage(async ({ params }: PageProps<{ token: string }>) => {
  await now()
  const { token } = await params
  // The form stays when the link has been used, so that what it says then can be read.
  const isOpen = await isNewAddressOpen(token)
  return (
    <main id="main" tabIndex={-1}>
      <h1>Your new e-mail</h1>
      <p className="lead">
        {isOpen
          ? 'Say so, and you sign in with it from now on; your mails come here.'
          : 'This link was used already, or is older than three days.'}
      </p>
      <ActionForm action={takeAddress} hidden={{ token }}>
        {isOpen && <SubmitButton kind="main">Yes, use this address</SubmitButton>}
      </ActionForm>
      <p>
        <Link href="/account">Account</Link>
      </p>
    </main>
  )
})
