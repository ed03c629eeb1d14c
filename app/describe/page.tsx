import { redirect } from 'next/navigation'
import { databasePage } from '@/app/database-page'
import { requireViewer } from '@/lib/access/page'
import { findDraft } from '@/lib/data/drafts'
import { stepsOf } from '@/lib/forms/describe/steps'
import { AnewForm } from './anew-form'

export const metadata = { title: 'Describe a home' }

/** Where a description begins, or is taken up again. */
export default databasePage(async () => {
  const viewer = await requireViewer('/describe')
  const draft = await findDraft(viewer)
  if (!draft) redirect('/describe/home')
  const steps = stepsOf(draft.answers)
  const name = draft.answers.home?.name?.[0]
  return (
    <main id="main" tabIndex={-1}>
      <h1>You have begun to describe {name ? `“${name}”` : 'a home'}</h1>
      <p className="lead">
        What you typed is kept. You were at screen {Math.max(1, steps.indexOf(draft.step) + 1)} of {steps.length}.
      </p>
      <AnewForm goOn={`/describe/${draft.step}`} />
    </main>
  )
})
