import type { DustEventKind } from '@/lib/core/household'
import type { Figure } from '@/lib/core/tables'

const PETS_REASON = 'Hair and dander; no multiplier has been published, so the person may set their own.'

/** Factor on the dust for 0, 1, 2, 3 and 4 or more fur-bearing pets. */
export const pets: readonly Figure[] = [1, 1.25, 1.5, 1.75, 2].map((value) => ({
  value,
  unit: '1',
  mark: 'P',
  reason: PETS_REASON,
}))

/** Factor on the dust on the days of an event, its first and last day included; several at once multiply. */
export const dustEvents: Record<DustEventKind, Figure> = {
  renovation: { value: 3, unit: '1', mark: 'P', reason: 'Building work in the home.' },
  smoke: { value: 2, unit: '1', mark: 'P', reason: 'Wildfire smoke outside.' },
  dust: { value: 1.3, unit: '1', mark: 'P', reason: 'Dust or pollen season.' },
}
