import type { Metadata } from 'next'
import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { now } from '@/app/now'
import type { PageProps } from '@/app/page-props'
import { ActionForm } from '@/app/parts/action-form'
import { SubmitButton } from '@/app/parts/submit-button'
import { isConfirmationOpen } from '@/lib/outbound/account-mail'
import { confirmMyAddress } from './actions'

export const metadata: Metadata = { title: 'Your address', robots: { index: false } }

export default databasePage(async ({ params }: PageProps<{ token: string }>) => {
  await now()
  const { token } = await params
  // The form stays when the link has been used, so that what it says then can be read.
  const isOpen = await isConfirmationOpen(token)
  return (
    <main id="main" tabIndex={-1}>
      <h1>Is this your address?</h1>
      <p className="lead">
        {isOpen
          ? 'Say so, and reminders come to it.'
          : 'This link was used already, or is older than three days. If reminders do not come, ask for a new one.'}
      </p>
      <ActionForm action={confirmMyAddress} hidden={{ token }}>
        {isOpen && <SubmitButton kind="main">Yes, it is mine</SubmitButton>}
      </ActionForm>
      <p>
        <Link href="/account/reminders">Reminders</Link>
      </p>
    </main>
  )
})
