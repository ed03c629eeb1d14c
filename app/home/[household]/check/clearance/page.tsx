import type { Metadata } from 'next'
import { ClearanceForm } from '@/app/check/clearance-form'
import { placeOf } from '@/app/check/load-place'
import { Remembered } from '@/app/check/remembered'
import { databasePage } from '@/app/database-page'
import { requireViewer } from '@/lib/access/page'
import { dayInWords } from '@/lib/core/day-words'
import { listEpisode } from '@/lib/data/episodes'
import { recordClearance } from './actions'

export const metadata: Metadata = { title: 'A professional was here' }

type Props = { params: Promise<{ household: string }> }

/** What is remembered of this home's troubles, and where a professional's visit is recorded. */
async function Page({ params }: Props) {
  const { household: id } = await params
  const viewer = await requireViewer(`/home/${id}/check/clearance`)
  const place = await placeOf(viewer, id, null)
  const events = await listEpisode(viewer, id)
  return (
    <main id="main" tabIndex={-1} className="guide">
      <h1>A professional was here</h1>
      <p className="lead">
        Only a fire crew, the gas company or a licensed technician can say that a hazard is over. A technician’s visit
        gives the one start back.
      </p>
      <Remembered place={place} clearanceHref="#what" />
      <ClearanceForm action={recordClearance} household={id} today={place.today} />
      {events.length > 0 && (
        <>
          <h2>What is remembered</h2>
          <ul className="lines">
            {events.toReversed().map(({ kind, on, key, byName, note }) => (
              <li key={key}>
                {dayInWords(on, place.today)}: {KINDS[kind]}
                {note && `, ${note}`}. Noted by {byName}.
              </li>
            ))}
          </ul>
        </>
      )}
      <nav className="guide-ways" aria-label="The guide">
        <a href={`/home/${id}/check`}>Back to the hazards</a>
      </nav>
    </main>
  )
}

const KINDS = {
  'trouble-began': 'a check was begun',
  'start-spent': 'the one start was used',
  trip: 'it tripped or stopped',
  'hazard-leave': 'a hazard for which the home is left',
  'hazard-stop': 'a hazard that stops every check',
  'technician-visit': 'a technician worked on it',
  clearance: 'a professional cleared the hazard',
  imported: 'this home was brought here, without its memory',
}

export default databasePage(Page)
