import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { may } from '@/lib/core/viewer'
import { billUnitInWords, unitsFor } from '@/lib/forms/bill-form'
import type { BillUnit } from '@/lib/forms/quantities'
import { HomeNav } from '../../home-nav'
import { loadHome } from '../../load'
import { BillsForm } from './bills-form'

export const generateMetadata = homeTitle('Bills')

/** Bills for fuel or for electric heat. */
export default databasePage(async ({ params }: { params: Promise<{ household: string }> }) => {
  const { household: id } = await params
  const { stored } = await loadHome(id, `/home/${id}/measured/bills`)
  const { household: home } = stored
  const heated = home.systems.filter(({ heat }) => heat)
  const billed = heated.filter(({ heat }) => heat && 'units' in unitsFor(heat.source))
  const units = [
    ...new Set(
      billed.flatMap(({ heat }): readonly BillUnit[] => {
        const may = heat && unitsFor(heat.source)
        return may && 'units' in may ? may.units : []
      }),
    ),
  ]
  const refusals = heated.flatMap(({ name, heat }) => {
    const of = heat && unitsFor(heat.source)
    return of && 'because' in of ? [`${name}: ${of.because}`] : []
  })
  return (
    <>
      <HomeNav id={id} name={home.name} current="Details" />
      <main id="main" tabIndex={-1}>
        <p className="place">
          <Link href={`/home/${id}/measured`}>Measured hours</Link>
        </p>
        <h1>Bills</h1>
        {!may(stored.role, 'manage') || stored.state !== 'open' ? (
          <p>This home can be read, but not changed by you.</p>
        ) : home.systems.length === 0 ? (
          <p>This home has no system that could be measured. Describe it first.</p>
        ) : (
          <>
            <p className="lead">
              What a burner used says how long it ran. With a few bills of winter and one of summer, hot water and
              cooking are taken off.
            </p>
            {refusals.map((say) => (
              <p key={say}>{say}</p>
            ))}
            {billed.length > 0 && (
              <BillsForm
                household={id}
                systems={billed.map(({ id, name }) => ({ id, name }))}
                units={units.map((unit) => [unit, billUnitInWords(unit)])}
              />
            )}
          </>
        )}
      </main>
    </>
  )
})
