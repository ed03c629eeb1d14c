import { notFound } from 'next/navigation'
import { addressPart } from '@/app/address-part'
import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { tables } from '@/content/tables'
import { looksWorth } from '@/lib/core/home-story'
import { TASKS, type Task } from '@/lib/core/household'
import { subjectInWords } from '@/lib/core/subject-words'
import { taskInWords } from '@/lib/core/words'
import { worthInWords } from '@/lib/core/worth-words'
import { HomeNav } from '../../../home-nav'
import { loadHome } from '../../../load'
import { RecordForm } from './record-form'

type Address = { household: string; task: string; subject: string }
type Props = { params: Promise<Address> }

export const generateMetadata = homeTitle('Record it', (home, { task, subject }: Address) =>
  isTask(task) ? `${taskInWords(task)}, ${subjectInWords(home, addressPart(subject))}` : 'Record it',
)

async function Page({ params }: Props) {
  const { household: id, task, subject: encoded } = await params
  const subject = addressPart(encoded)
  const { stored, on } = await loadHome(id, `/home/${id}/record/${task}/${encoded}`)
  const { household } = stored
  const known = [...household.filters, ...household.systems, ...household.devices].some((s) => s.id === subject)
  if (!isTask(task) || !known) notFound()
  const filter = household.filters.find((f) => f.id === subject)
  return (
    <>
      <HomeNav id={id} home={household} current="Due" />
      <main id="main" tabIndex={-1}>
        <h1>
          {taskInWords(task)}, {subjectInWords(household, subject)}
        </h1>
        <p className="lead">{tables.tasks[task].what}</p>
        {task === 'look-at-filter' && filter && filter.medium !== 'screen' && (
          <p>{worthInWords(looksWorth(household, tables, on).get(filter.id) ?? null)}</p>
        )}
        <RecordForm
          household={id}
          task={task}
          subject={subject}
          today={on}
          filter={filter ?? null}
          back={`/home/${id}`}
        />
      </main>
    </>
  )
}

function isTask(text: string): text is Task {
  return (TASKS as readonly string[]).includes(text)
}

export default databasePage(Page)
