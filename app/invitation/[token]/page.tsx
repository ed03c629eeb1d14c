import type { Metadata } from 'next'
import { databasePage } from '@/app/database-page'
import { now } from '@/app/now'
import { offerInWords } from '@/app/offer-words'
import type { PageProps } from '@/app/page-props'
import { findOffer } from '@/lib/access/invite'
import { findViewer } from '@/lib/access/page'
import { findRoleIn } from '@/lib/data/members'
import { Answer } from './answer'

export const metadata: Metadata = { title: 'Invitation', robots: { index: false } }

export default databasePage(async ({ params }: PageProps<{ token: string }>) => {
  const { token } = await params
  const offer = await findOffer(token, await now())
  if (!offer) return <Over />
  const viewer = await findViewer()
  const role = viewer && offer.householdId ? await findRoleIn(viewer, offer.householdId) : null
  return (
    <main id="main" tabIndex={-1}>
      <h1>{offerInWords(offer)}</h1>
      {offer.kind === 'member' && offer.role === 'technician' && (
        <p className="lead">You see what is due there and the visits that are a technician’s. You change nothing.</p>
      )}
      {offer.kind === 'member' && offer.role !== 'technician' && (
        <p className="lead">
          You see what is due there, say what you did, and change what is described. Others there see your name beside
          it.
        </p>
      )}
      {offer.kind === 'hand-over' && (
        <p className="lead">
          It becomes yours alone: the equipment and what was done to it stay, the names of whoever lived there go.
        </p>
      )}
      <Answer token={token} offer={offer} viewer={viewer} role={role} />
    </main>
  )
})

function Over() {
  return (
    <main id="main" tabIndex={-1}>
      <h1>This invitation is over</h1>
      <p className="lead">
        It was used already, taken back, or is older than a week. Ask whoever sent it for a new one.
      </p>
    </main>
  )
}
