import Link from 'next/link'
import { notFound } from 'next/navigation'
import { addressPart } from '@/app/address-part'
import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { isFilterItem } from '@/app/parts/plan-sheet'
import { WhyDay } from '@/app/parts/why-day'
import { tables } from '@/content/tables'
import { effects } from '@/lib/core/effects'
import { subjectInWords } from '@/lib/core/subject-words'
import { taskInWords } from '@/lib/core/words'
import { HomeNav } from '../../home-nav'
import { loadHome } from '../../load'

type Props = { params: Promise<{ household: string; filter: string }> }

export const generateMetadata = homeTitle(
  'Why this day',
  (home, { filter }: { household: string; filter: string }) =>
    `Why this day: ${subjectInWords(home, addressPart(filter))}`,
)

async function Page({ params }: Props) {
  const { household: id, filter: encoded } = await params
  const filter = addressPart(encoded)
  const { stored, on, plan } = await loadHome(id, `/home/${id}/why/${encoded}`)
  const item = plan.items.find((i) => isFilterItem(i) && i.subject === filter)
  const workings = plan.workings.find((w) => w.filter === filter)
  if (!item || !workings) notFound()
  const { household } = stored
  const system = household.filters.find((each) => each.id === filter)?.system
  return (
    <>
      <HomeNav id={id} home={household} current="Due" />
      <main id="main" tabIndex={-1}>
        <h1>
          Why this day? {taskInWords(item.task)}, {subjectInWords(household, filter)}
        </h1>
        <WhyDay
          household={household}
          item={item}
          workings={workings}
          effects={effects(household, filter, tables, on)}
          on={on}
          tables={tables}
        />
        {system && (
          <p className="no-print">
            <Link href={`/home/${id}/what-happened/${encodeURIComponent(system)}#filter-${filter}`}>
              What happened to it, and what a look today would teach
            </Link>
          </p>
        )}
      </main>
    </>
  )
}

export default databasePage(Page)
