import { confirmedTo, killAfter, startChild } from '../child'

/** How often a child is killed, and how many milliseconds after it began each time. */
export interface Kills {
  times: number
  pause: (kill: number) => number
}

/** What stood after the kills. */
export interface Survived {
  /** How much was confirmed before it was killed. */
  confirmed: number
  /** Confirmed, and not there afterwards. */
  lost: string[]
  /** There, and not whole. */
  torn: string[]
}

/** Starts a child, kills it after it began, and gives what was confirmed to it. */
export async function killed(name: string, args: string[], milliseconds: number): Promise<string[]> {
  const child = startChild(name, args)
  await killAfter(child, milliseconds)
  return confirmedTo(child)
}
