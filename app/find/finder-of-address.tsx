import { FINDER } from '@/content/finder/finder'
import { walkFinder } from '@/lib/guide/finder-address'
import { FinderScreen } from './finder-screen'

export interface FinderAddress {
  /** What stands behind the address's question mark. */
  search: string
  nowMinutes: number
}

/** The finder's screen of an address: on the server, and on the phone the same. */
export function FinderOfAddress({ search, nowMinutes }: FinderAddress) {
  const fields = new URLSearchParams(search)
  const field = (name: string) => fields.get(name) ?? ''
  const walk = walkFinder(FINDER, { a: field('a'), t: field('t'), k: field('k') }, nowMinutes)
  return <FinderScreen walk={walk} began={walk.steps.length === 0 ? String(nowMinutes) : field('t')} field={field} />
}
