import type { Household } from '@/lib/core/household'
import { aHousehold } from './a-household'

const BUILDINGS = ['Larkspur Court', 'Dune Street 11', 'Élm Row', 'Mill House', 'Ash Lane'] as const

/** Forty invented flats in five buildings, let, their filters changed on different days; one size is the frame's own. */
export function fortyUnits(): Household[] {
  return Array.from({ length: 40 }, (_, i) => {
    const building = BUILDINGS[i % BUILDINGS.length] as string
    const number = Math.floor(i / BUILDINGS.length) + 1
    const filter = { system: 'main', medium: 'pleated', merv: 8 } as const
    return aHousehold({
      id: `${building} ${number}`,
      name: `Flat ${number}`,
      building,
      tenure: 'let',
      since: '2026-06-01',
      dustEvents: [],
      readings: [],
      filters: [
        { id: 'hall', place: 'wall-grille', nominal: { widthIn: 16, heightIn: 25, depthIn: 1 }, ...filter },
        i % 8 === 0
          ? { id: 'bed', place: 'ceiling-grille', nominal: { widthIn: 15.5, heightIn: 24.5, depthIn: 1 }, ...filter }
          : { id: 'bed', place: 'ceiling-grille', nominal: { widthIn: 20, heightIn: 20, depthIn: 1 }, ...filter },
      ],
      records: [
        {
          on: `2026-${i % 2 === 0 ? '09' : '10'}-${String(1 + (i % 28)).padStart(2, '0')}`,
          kind: 'filter-changed',
          filter: 'hall',
        },
        { on: `2026-10-${String(1 + (i % 28)).padStart(2, '0')}`, kind: 'filter-changed', filter: 'bed' },
        { on: '2026-08-15', kind: 'service-done', task: 'heating-service', subject: 'main', by: 'technician' },
      ],
    })
  })
}
