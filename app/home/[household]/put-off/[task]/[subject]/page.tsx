import { notFound } from 'next/navigation'
import { addressPart } from '@/app/address-part'
import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { dayInWords } from '@/lib/core/day-words'
import { subjectInWords } from '@/lib/core/subject-words'
import { taskInWords } from '@/lib/core/words'
import { HomeNav } from '../../../home-nav'
import { loadHome } from '../../../load'
import { PutOffForm } from './put-off-form'

type Props = { params: Promise<{ household: string; task: string; subject: string }> }

export const generateMetadata = homeTitle('Put it off')

async function Page({ params }: Props) {
  const { household: id, task, subject: encoded } = await params
  const subject = addressPart(encoded)
  const { stored, on, plan } = await loadHome(id, `/home/${id}/put-off/${task}/${encoded}`)
  const item = plan.items.find((i) => i.task === task && i.subject === subject)
  if (!item) notFound()
  return (
    <>
      <HomeNav id={id} home={stored.household} current="Due" />
      <main id="main" tabIndex={-1}>
        <h1>
          Put off: {taskInWords(item.task).toLowerCase()}, {subjectInWords(stored.household, subject)}
        </h1>
        <p className="lead">It is due on {dayInWords(item.due, on)}. Until the day you choose it is not asked for.</p>
        <PutOffForm household={id} task={item.task} subject={subject} isSafety={item.task === 'alarm-replace'} />
      </main>
    </>
  )
}

export default databasePage(Page)
