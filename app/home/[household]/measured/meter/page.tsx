import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { systemChoices } from '@/lib/core/subject-words'
import { loadHome } from '../../load'
import { MeasuredPart } from '../part'
import { MeterForm } from './meter-form'

const TITLE = 'Readings of an hour meter'
export const generateMetadata = homeTitle(TITLE)

/** Stands of a counter of hours. */
export default databasePage(async ({ params }: { params: Promise<{ household: string }> }) => {
  const { household: id } = await params
  const home = await loadHome(id, `/home/${id}/measured/meter`)
  return (
    <MeasuredPart home={home} title={TITLE}>
      <p className="lead">
        Some furnaces and controls have a small counter of hours. Write what it showed on two days or more: the hours
        between them are what ran. Don’t open anything to get at it.
      </p>
      <MeterForm household={id} systems={systemChoices(home.stored.household)} />
    </MeasuredPart>
  )
})
