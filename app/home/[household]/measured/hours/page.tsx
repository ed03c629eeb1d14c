import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { systemChoices } from '@/lib/core/subject-words'
import { loadHome } from '../../load'
import { MeasuredPart } from '../part'
import { HoursForm } from './hours-form'

const TITLE = 'Hours that the thermostat shows'
export const generateMetadata = homeTitle(TITLE)

/** Hours of some days as a thermostat or its app shows them. */
export default databasePage(async ({ params }: { params: Promise<{ household: string }> }) => {
  const { household: id } = await params
  const home = await loadHome(id, `/home/${id}/measured/hours`)
  return (
    <MeasuredPart home={home} title={TITLE}>
      <p className="lead">
        Many thermostats show for how many hours they called for heat and cooling this month, or the last one. Write
        what yours shows, and the days that it counts.
      </p>
      <HoursForm household={id} systems={systemChoices(home.stored.household)} />
    </MeasuredPart>
  )
})
