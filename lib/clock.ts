/** The only reading of the time in the whole program. */
export function now(): Date {
  return new Date()
}
