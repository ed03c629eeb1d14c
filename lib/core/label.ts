import type { Day } from './day'
import { sizeInWords } from './filter-words'
import type { Filter } from './household'

/** The label to print for a grille, as data: the page draws it and turns `code` into squares. */
export interface FilterLabel {
  /** `16 × 25 × 1`; null for a screen, which has no size to buy. */
  size: string | null
  arrow: string | null
  lastChanged: Day | null
  nextLook: Day | null
  /** The address of this filter's page. It opens nothing by itself: whoever scans it still signs in. */
  code: string
}

/**
 * Puts a label together. `arrow` is the card's sentence for the place; `nextLook` the plan's day for a look, or the
 * due day if there is none. Throws if the address carries more than a plain path: a printed code hangs where every
 * visitor sees it, so that it must hold no link's token.
 */
export function filterLabel(given: {
  filter: Filter
  arrow: string | null
  lastChanged: Day | null
  nextLook: Day | null
  address: string
}): FilterLabel {
  const { filter, arrow, lastChanged, nextLook, address } = given
  const url = new URL(address)
  if (!/^https?:$/.test(url.protocol)) throw new RangeError(`no web address: ${address}`)
  if (url.search !== '' || url.hash !== '' || url.username !== '' || url.password !== '') {
    throw new RangeError('a label must not carry a secret')
  }
  const isScreen = filter.medium === 'screen'
  return { size: isScreen ? null : sizeInWords(filter.nominal), arrow, lastChanged, nextLook, code: url.href }
}
