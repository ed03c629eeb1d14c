import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { systemChoices } from '@/lib/core/subject-words'
import { billUnitInWords, unitsFor } from '@/lib/forms/bill-form'
import { loadHome } from '../../load'
import { MeasuredPart } from '../part'
import { BillsForm } from './bills-form'

const TITLE = 'Bills'
export const generateMetadata = homeTitle(TITLE)

/** Bills for fuel or for electric heat. */
export default databasePage(async ({ params }: { params: Promise<{ household: string }> }) => {
  const { household: id } = await params
  const loaded = await loadHome(id, `/home/${id}/measured/bills`)
  const { household: home } = loaded.stored
  const heated = home.systems.flatMap(({ id, name, heat }) =>
    heat ? [{ id, name, may: unitsFor(heat.source, home.units) }] : [],
  )
  const billed = heated.filter(({ may }) => 'units' in may)
  const units = new Set(heated.flatMap(({ may }) => ('units' in may ? may.units : [])))
  const refusals = heated.flatMap(({ name, may }) => ('because' in may ? [`${name}: ${may.because}`] : []))
  return (
    <MeasuredPart home={loaded} title={TITLE}>
      <p className="lead">
        What a burner used says how long it ran. With a few bills of winter and one of summer, hot water and cooking are
        taken off.
      </p>
      {refusals.map((say) => (
        <p key={say}>{say}</p>
      ))}
      {billed.length > 0 && (
        <BillsForm
          household={id}
          systems={systemChoices(home).filter(({ id }) => billed.some((system) => system.id === id))}
          counts={[...units].map((unit) => [unit, billUnitInWords(unit)])}
          units={home.units}
        />
      )}
    </MeasuredPart>
  )
})
