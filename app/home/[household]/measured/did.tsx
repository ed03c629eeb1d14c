import { PlanChangeList } from '@/app/parts/plan-change-list'
import { tables } from '@/content/tables'
import type { AccountViewer } from '@/lib/access/sign-in'
import { planChanges } from '@/lib/core/plan-changes'
import { findMeasuring } from '@/lib/data/readings'
import { LineButton } from '../line-button'
import type { LoadedHome } from '../load'
import { takeBackMeasured } from './actions'

/** What was just done, what it does to the dates, and the way back. */
export async function Did({
  home: { stored, on },
  viewer,
  did,
}: {
  home: LoadedHome
  viewer: AccountViewer
  did: unknown
}) {
  if (did === 'taken-back')
    return (
      <p className="notice" role="status">
        Taken back. Everything stands as it did before.
      </p>
    )
  const found = typeof did === 'string' ? await findMeasuring(viewer, stored.id, did) : null
  if (!found || found.isUndone || typeof did !== 'string') return null
  const { household } = stored
  const systems = new Set(household.systems.map(({ id }) => id))
  const before = { ...household, readings: found.before.filter(({ system }) => systems.has(system)) }
  const changes = planChanges(before, household, tables, on)
  return (
    <div className="notice" role="status">
      <p>
        {found.kind === 'taken-out' ? 'Taken out.' : 'Saved.'} {changes.length === 0 && 'No date moves.'}
      </p>
      <PlanChangeList changes={changes} />
      <LineButton
        action={takeBackMeasured}
        fields={{ household: stored.id, measuring: did }}
        about="what was just saved"
      >
        Take it back
      </LineButton>
    </div>
  )
}
