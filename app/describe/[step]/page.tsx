import type { Metadata } from 'next'
import { notFound, redirect } from 'next/navigation'
import { databasePage } from '@/app/database-page'
import { requireViewer } from '@/lib/access/page'
import { findDraft } from '@/lib/data/drafts'
import { findStep, mayAddAnother, stepBefore, stepsOf } from '@/lib/forms/describe/steps'
import { CheckScreen } from './check-screen'
import { screenOf } from './screen'
import { StepForm } from './step-form'

/** Each screen by its own name: “Its filter: describe a home”. */
export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  const step = findStep((await params).step)
  if (!step) return { title: 'Describe a home' }
  return { title: `${step === 'check' ? 'Is this your home?' : `${screenOf(step, {}, '').title}:`} Describe a home` }
}

interface PageProps {
  params: Promise<{ step: string }>
  searchParams: Promise<{ shown?: string | string[] }>
}

/** One screen of the description. */
export default databasePage(async ({ params, searchParams }: PageProps) => {
  const { step: name } = await params
  const { shown } = await searchParams
  const step = findStep(name)
  if (!step) notFound()
  const viewer = await requireViewer(`/describe/${step}`)
  const draft = await findDraft(viewer)
  const answers = draft?.answers ?? {}
  const steps = stepsOf(answers)
  if (!steps.includes(step) || (!draft && step !== 'home')) redirect('/describe')
  const place = `Screen ${steps.indexOf(step) + 1} of ${steps.length}`
  if (step === 'check') return <CheckScreen draft={answers} place={place} />
  return (
    <main id="main" tabIndex={-1}>
      <StepForm
        key={step}
        step={step}
        place={place}
        screen={screenOf(step, answers, typeof shown === 'string' ? shown : '')}
        hasBefore={stepBefore(step, answers) !== null}
        mayAdd={mayAddAnother(step, answers)}
      />
    </main>
  )
})
