import type { Metadata } from 'next'
import { databasePage } from '@/app/database-page'
import { FourDoors } from '@/app/four-doors'
import { plans } from '@/app/plans'
import { requireViewer } from '@/lib/access/page'
import * as clock from '@/lib/clock'
import { HomeRow } from './home-row'
import { byPressing } from './most-pressing'

export const metadata: Metadata = { title: 'Homes' }

export default databasePage(async () => {
  const viewer = await requireViewer('/homes')
  const day = (home: { timeZone: string }) => clock.today(home.timeZone)
  const homes = byPressing(await plans.list(viewer, day))
  return (
    <main id="main" tabIndex={-1}>
      <h1>Homes</h1>
      {homes.length === 0 ? (
        <p className="lead">None yet. Describe your home, and its dates are here.</p>
      ) : (
        <ul className="home-list">
          {homes.map(({ home, plan }) => (
            <HomeRow key={home.id} home={home} plan={plan} on={day(home)} />
          ))}
        </ul>
      )}
      <h2>{homes.length === 0 ? 'Where to begin' : 'And also'}</h2>
      <FourDoors signedIn />
    </main>
  )
})
