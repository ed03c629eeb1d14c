import type { Household } from '@/lib/core/household'

/** A year and a half of a dusty home: readings, looks and filters taken out. */
export const DUSTY_YEAR = {
  since: '2025-06-01',
  records: [
    { on: '2025-08-01', kind: 'filter-changed', filter: 'hall' },
    { on: '2025-11-02', kind: 'filter-changed', filter: 'hall', light: 'dark' },
    { on: '2026-01-10', kind: 'filter-changed', filter: 'hall', light: 'dark' },
    { on: '2026-02-12', kind: 'filter-looked', filter: 'hall', light: 'half' },
    { on: '2026-03-20', kind: 'filter-changed', filter: 'hall', light: 'dark' },
    { on: '2026-06-25', kind: 'filter-changed', filter: 'hall', light: 'half' },
    { on: '2026-09-20', kind: 'filter-changed', filter: 'hall', light: 'dark' },
    { on: '2026-10-20', kind: 'filter-looked', filter: 'hall', light: 'clear' },
  ],
  readings: [
    { system: 'main', from: '2026-01-01', to: '2026-01-31', source: 'thermostat', heatHours: 260, coolHours: 0 },
    { system: 'main', from: '2026-07-01', to: '2026-07-31', source: 'thermostat', heatHours: 0, coolHours: 150 },
    { system: 'main', from: '2026-10-01', to: '2026-10-20', source: 'thermostat', heatHours: 50, coolHours: 2 },
  ],
} satisfies Partial<Household>
