import { type Item, STATES } from '@/lib/core/plan-types'
import type { Home } from '@/lib/data/households'

/** The one item that presses most: by state, then by day. */
export function mostPressing(items: readonly Item[]): Item | undefined {
  return items.toSorted((a, b) => compare(rank(a), rank(b)))[0]
}

/** Homes by what presses most in them; the closed ones last. */
export function byPressing<H extends { home: Home; plan: { items: Item[] } }>(homes: readonly H[]): H[] {
  const ranked = homes.map((each) => ({
    each,
    rank: each.home.state === 'closed' ? '~' : rank(mostPressing(each.plan.items)),
  }))
  return ranked.toSorted((a, b) => compare(a.rank, b.rank)).map(({ each }) => each)
}

function rank(item: Item | undefined): string {
  return item ? `${STATES.indexOf(item.state)} ${item.due}` : '9'
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
