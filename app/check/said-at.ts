/** The minute at which gas was denied, or null where nobody can have done so now. */
export function saidAt(at: unknown, now: number): number | null {
  const minute = typeof at === 'string' && /^\d{1,9}$/.test(at) ? Number(at) : null
  return minute !== null && minute <= now && minute > now - 24 * 60 ? minute : null
}
