import type { Reading } from '@/lib/core/household'

/** A year of measured months, each with the same hours, so that parts of two years cannot be taken for one. */
export function aMeasuredYear(hours: number): Reading[] {
  return Array.from({ length: 12 }, (_, month) => {
    const first = `2025-${String(month + 1).padStart(2, '0')}`
    const last = new Date(Date.UTC(2025, month + 1, 0)).getUTCDate()
    return { system: 'main', from: `${first}-01`, to: `${first}-${last}`, source: 'thermostat', heatHours: hours }
  })
}
