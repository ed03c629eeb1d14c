/**
 * Milliseconds of work that this process has done so far: the difference of two says what something takes, also where
 * the machine has others to serve, which a clock would count along.
 */
export function cpuTime(): number {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}
