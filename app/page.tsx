import { redirect } from 'next/navigation'
import { findViewer } from '@/lib/access/page'
import { signUpState } from '@/lib/data/accounts'
import { listHomes } from '@/lib/data/households'
import { databasePage } from './database-page'
import { FourDoors } from './four-doors'

export default databasePage(async () => {
  const viewer = await findViewer()
  if (viewer) {
    const [first, ...others] = await listHomes(viewer)
    redirect(first && others.length === 0 ? `/home/${first.id}` : '/homes')
  }
  const { empty } = await signUpState()
  return (
    <main id="main" tabIndex={-1}>
      <h1>What your heating and cooling needs, and the day it needs it</h1>
      <p className="lead">
        When the filter is really full. Which service comes before which season. What to do when the house stays cold,
        and where to stop.
      </p>
      <FourDoors fresh={empty} />
    </main>
  )
})
