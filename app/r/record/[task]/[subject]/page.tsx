import { notFound } from 'next/navigation'
import { addressPart } from '@/app/address-part'
import { RecordForm } from '@/app/home/[household]/record/[task]/[subject]/record-form'
import { tables } from '@/content/tables'
import { subjectInWords } from '@/lib/core/subject-words'
import { taskInWords } from '@/lib/core/words'
import { rentedPage } from '../../../rented-page'
import { RenterNav } from '../../../renter-nav'

type Props = { params: Promise<{ task: string; subject: string }> }

export const metadata = { title: 'Record it' }

const TASKS = ['change-filter', 'wash-filter', 'look-at-filter'] as const

export default rentedPage(async (home, { params }: Props) => {
  const { task: named, subject: encoded } = await params
  const subject = addressPart(encoded)
  const { stored, on } = home
  const { household } = stored
  const task = TASKS.find((known) => known === named)
  const filter = household.filters.find(({ id }) => id === subject)
  if (!task || !filter) notFound()
  return (
    <>
      <RenterNav id={stored.id} home={household} current="Due" />
      <main id="main" tabIndex={-1}>
        <h1>
          {taskInWords(task)}, {subjectInWords(household, subject)}
        </h1>
        <p className="lead">{tables.tasks[task].what}</p>
        <RecordForm household={stored.id} task={task} subject={subject} today={on} filter={filter} back="/r" />
      </main>
    </>
  )
})
