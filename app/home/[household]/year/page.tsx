import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { YearStrip } from '@/app/parts/year-strip'
import { tables } from '@/content/tables'
import { homeInWords } from '@/lib/core/subject-words'
import { systemYears } from '@/lib/core/year'
import { HomeNav } from '../home-nav'
import { loadHome } from '../load'

type Props = { params: Promise<{ household: string }> }

export const generateMetadata = homeTitle('Year')

async function Page({ params }: Props) {
  const { household: id } = await params
  const { stored, on, plan } = await loadHome(id, `/home/${id}/year`)
  const { household } = stored
  return (
    <>
      <HomeNav id={id} home={household} current="Year" />
      <main id="main" tabIndex={-1}>
        <h1>The year of {homeInWords(household)}</h1>
        {household.systems.length === 0 && (
          <p className="lead">
            No heating or cooling of this home is described, so there is no year to draw. Details is the place to add
            it.
          </p>
        )}
        {systemYears(household, tables, on).map((year) => (
          <YearStrip key={year.system} household={household} year={year} on={on} workings={plan.workings} />
        ))}
      </main>
    </>
  )
}

export default databasePage(Page)
