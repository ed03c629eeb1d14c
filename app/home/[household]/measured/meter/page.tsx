import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { may } from '@/lib/core/viewer'
import { HomeNav } from '../../home-nav'
import { loadHome } from '../../load'
import { MeterForm } from './meter-form'

export const generateMetadata = homeTitle('Readings of an hour meter')

/** Stands of a counter of hours. */
export default databasePage(async ({ params }: { params: Promise<{ household: string }> }) => {
  const { household: id } = await params
  const { stored } = await loadHome(id, `/home/${id}/measured/meter`)
  const { household: home } = stored
  return (
    <>
      <HomeNav id={id} name={home.name} current="Details" />
      <main id="main" tabIndex={-1}>
        <p className="place">
          <Link href={`/home/${id}/measured`}>Measured hours</Link>
        </p>
        <h1>Readings of an hour meter</h1>
        {!may(stored.role, 'manage') || stored.state !== 'open' ? (
          <p>This home can be read, but not changed by you.</p>
        ) : home.systems.length === 0 ? (
          <p>This home has no system that could be measured. Describe it first.</p>
        ) : (
          <>
            <p className="lead">
              Some furnaces and controls have a small counter of hours. Write what it showed on two days or more: the
              hours between them are what ran. Don’t open anything to get at it.
            </p>
            <MeterForm household={id} systems={home.systems.map(({ id, name }) => ({ id, name }))} />
          </>
        )}
      </main>
    </>
  )
})
