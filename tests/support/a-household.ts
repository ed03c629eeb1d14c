import type { Household } from '@/lib/core/household'

/** An invented home with one of everything, to be changed by the test that needs it otherwise. */
export function aHousehold(change: Partial<Household> = {}): Household {
  return {
    id: 'larkspur-2',
    name: 'Larkspur Court 2',
    building: 'Larkspur Court',
    tenure: 'own',
    timeZone: 'America/Chicago',
    units: 'us',
    climate: { kind: 'annual', hdd65: 6200, cdd65: 850, heatingDesignF: 2, coolingDesignF: 88 },
    people: 3,
    pets: 1,
    smoking: false,
    carpet: true,
    hardWater: false,
    vulnerable: false,
    dustEvents: [{ kind: 'renovation', from: '2026-10-01', to: '2026-10-20' }],
    systems: [
      {
        id: 'main',
        name: 'Main system',
        delivery: 'ducted',
        heat: { source: 'gas-furnace', inputBtuh: 80_000, efficiency: 0.8 },
        cool: { source: 'central-ac', tons: 3 },
        fan: { mode: 'auto' },
      },
    ],
    filters: [
      {
        id: 'hall',
        system: 'main',
        place: 'wall-grille',
        nominal: { widthIn: 16, heightIn: 25, depthIn: 1 },
        medium: 'pleated',
        merv: 8,
      },
    ],
    devices: [{ id: 'co1', kind: 'co-alarm', made: '2021-03-01', endOfLife: '2031-03-01' }],
    records: [{ on: '2026-09-20', kind: 'filter-changed', filter: 'hall', light: 'dark' }],
    readings: [{ system: 'main', from: '2026-10-01', to: '2026-10-31', source: 'thermostat', heatHours: 61.5 }],
    ...change,
  }
}
