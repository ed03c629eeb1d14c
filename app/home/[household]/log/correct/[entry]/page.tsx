import { notFound } from 'next/navigation'
import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { dayInWords } from '@/lib/core/day-words'
import { recordInWords, subjectOfRecord } from '@/lib/core/log-words'
import { subjectInWords } from '@/lib/core/subject-words'
import { may } from '@/lib/core/viewer'
import { listLog } from '@/lib/data/log'
import { HomeNav } from '../../../home-nav'
import { loadHome } from '../../../load'
import { CorrectForm } from './correct-form'

type Props = { params: Promise<{ household: string; entry: string }> }

export const generateMetadata = homeTitle('Correct an entry')

async function Page({ params }: Props) {
  const { household: id, entry: entryId } = await params
  const { viewer, stored, on } = await loadHome(id, `/home/${id}/log/correct/${entryId}`)
  const entry = (await listLog(viewer, id)).find((found) => found.id === entryId)
  if (!entry?.standing || !may(stored.role, 'record')) notFound()
  const { record } = entry
  const subject = subjectOfRecord(record)
  return (
    <>
      <HomeNav id={id} home={stored.household} current="Log" />
      <main id="main" tabIndex={-1}>
        <h1>
          Correct: {recordInWords(record).toLowerCase()}, {subjectInWords(stored.household, subject)}
        </h1>
        <p className="lead">
          Recorded for {dayInWords(record.on)} by {entry.by.name}. What stands there now stays in the log, marked.
        </p>
        <CorrectForm household={id} entry={entryId} record={record} today={on} />
      </main>
    </>
  )
}

export default databasePage(Page)
