import type { BriefFacts } from '@/app/check/brief/brief-of-address'
import { plans } from '@/app/plans'
import type { StoredHousehold } from '@/lib/data/households'

/** The equipment and the filters of the system that has the trouble, or of all where none was chosen. */
export function briefFacts(stored: StoredHousehold, systemId: string | null, on: string): BriefFacts {
  const { household } = stored
  const system =
    household.systems.find(({ id }) => id === systemId) ??
    (household.systems.length === 1 ? household.systems[0] : null)
  const { workings } = plans.of(stored, on)
  const filters = household.filters
    .filter((filter) => !system || filter.system === system.id)
    .map((filter) => {
      const changed = household.records.filter(
        (record) => record.kind === 'filter-changed' && record.filter === filter.id && record.on <= on,
      )
      return {
        filter,
        loadedFraction: workings.find((each) => each.filter === filter.id)?.loadedFraction ?? null,
        lastChangedOn:
          changed
            .map((record) => record.on)
            .sort()
            .at(-1) ?? null,
      }
    })
  return { household, system: system ?? null, filters }
}
