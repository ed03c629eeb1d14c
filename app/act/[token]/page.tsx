import type { Metadata } from 'next'
import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { now } from '@/app/now'
import type { PageProps } from '@/app/page-props'
import { ActionForm } from '@/app/parts/action-form'
import { SubmitButton } from '@/app/parts/submit-button'
import { addDays } from '@/lib/core/day'
import { dayInWords } from '@/lib/core/day-words'
import { homeInWords, subjectInWords } from '@/lib/core/subject-words'
import { taskDoneInWords, taskInWords } from '@/lib/core/words'
import { type Asked, findAsked } from '@/lib/outbound/act'
import { actByMail } from './actions'

export const metadata: Metadata = { title: 'From your mail', robots: { index: false } }

export default databasePage(async ({ params }: PageProps<{ token: string }>) => {
  await now()
  const { token } = await params
  const asked = await findAsked(token)
  if (!asked) return <Over />
  return (
    <main id="main" tabIndex={-1}>
      {asked.isUsed ? <Done asked={asked} /> : <Confirm asked={asked} token={token} />}
    </main>
  )
})

// Programs that scan mail follow its links: opening this page changes nothing.
function Confirm({ asked, token }: { asked: Asked; token: string }) {
  const { link, stored, viewer, on } = asked
  const subject = subjectInWords(stored.household, link.subject)
  return (
    <>
      <h1>{sentence(asked)}?</h1>
      <p className="lead">
        {taskInWords(link.task)}, {subject}: {homeInWords(stored.household)}. {dayInWords(on)}.
      </p>
      <ActionForm action={actByMail} hidden={{ token }}>
        <SubmitButton kind="main">{link.button === 'later' ? 'Yes, remind me then' : 'Yes, record it'}</SubmitButton>
      </ActionForm>
      <p className="hint">It goes into the log under the name of {viewer.name}, and can be taken back there.</p>
    </>
  )
}

function Done({ asked }: { asked: Asked }) {
  const { link, stored } = asked
  return (
    <>
      <h1>Done</h1>
      <p className="lead">
        {link.button === 'later'
          ? `${taskInWords(link.task)} is put off for two weeks.`
          : 'It is recorded, and the next day is reckoned from it.'}
      </p>
      <p>
        You can close this page, or see{' '}
        <Link href={`/home/${stored.id}`}>what is due in {homeInWords(stored.household)}</Link> and{' '}
        <Link href={`/home/${stored.id}/log`}>its log</Link>, where it can be taken back.
      </p>
    </>
  )
}

function sentence({ link, on }: Asked): string {
  if (link.button === 'clear') return 'Looked at today, and light comes through'
  if (link.button === 'later') return `Remind you again on ${dayInWords(addDays(on, 14), on)}`
  return `${taskDoneInWords(link.task)} today`
}

function Over() {
  return (
    <main id="main" tabIndex={-1}>
      <h1>This link is over</h1>
      <p className="lead">
        It is older than a month, was changed on its way, or leads to a home that is no longer yours.
      </p>
      <p>
        <Link href="/homes">Your homes</Link> show what is due now.
      </p>
    </main>
  )
}
