import type { Day } from './day'
import type { Climate } from './household'

const DAYS_OF_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
// Our own choice: a mean day of 50 °F has nights near freezing in a dry climate; 65 − 15.
const COLD_DEGREE_DAYS_A_DAY = 15
const FREEZING_F = 32

/**
 * Whether a month is one in which an empty house may freeze: by the month's own degree-days, and for a climate known by
 * the year only November to March, where its design day freezes.
 */
export function isColdMonth(climate: Climate, day: Day): boolean {
  const month = Number(day.slice(5, 7)) - 1
  if (climate.kind === 'annual') return climate.heatingDesignF <= FREEZING_F && (month <= 2 || month >= 10)
  return (climate.hdd65[month] ?? 0) / (DAYS_OF_MONTH[month] ?? 30) >= COLD_DEGREE_DAYS_A_DAY
}
