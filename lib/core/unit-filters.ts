import type { Assumed, Filter, System } from './household'
import { sizeText } from './supplies'
import type { Note } from './unit-merge'
import type { SheetFilter } from './unit-sheet'

// What is reckoned with until somebody looks: one of the most common sizes [P]. A screen's size changes nothing.
const USUAL_SIZE = { widthIn: 16, heightIn: 25, depthIn: 1 }
const SCREEN_SIZE = { widthIn: 12, heightIn: 9, depthIn: 0.5 }

const CODES = { place: 'filter-place', nominal: 'filter-size', medium: 'filter-medium' } as const

interface Merged {
  filters: Filter[]
  /** Which filter each group of the row is about; none for an empty group past the last filter. */
  ids: (string | undefined)[]
  /** What is not known of the filters that the row adds. */
  assumed: Assumed[]
}

/** A home's filters with what a row says of them: the first group is of the first filter, and so on; more are added. */
export function mergeFilters(
  before: readonly Filter[],
  groups: readonly SheetFilter[],
  { system, note, known }: { system: System; note: Note; known: Assumed[] },
): Merged {
  const filters = [...before]
  const ids: (string | undefined)[] = []
  const assumed: Assumed[] = []
  for (const [i, group] of groups.entries()) {
    const was = before[i]
    const isEmpty = Object.keys(group).length === 0
    if (!was && isEmpty) ids.push(undefined)
    else if (was) {
      ids.push(was.id)
      filters[i] = changed(was, group, (what, from, to) => note(`filter ${i + 1} ${what}`, from, to))
      for (const key of ['place', 'nominal', 'medium'] as const)
        if (group[key] !== undefined) known.push({ code: CODES[key], subject: was.id })
    } else {
      const filter = newFilter(group, system, new Set(filters.map(({ id }) => id)))
      note(`filter ${i + 1}`, undefined, sizeText(filter.nominal))
      filters.push(filter)
      ids.push(filter.id)
      if (filter.medium !== 'screen')
        for (const key of ['place', 'nominal', 'medium'] as const)
          if (group[key] === undefined) assumed.push({ code: CODES[key], subject: filter.id })
    }
  }
  return { filters, ids, assumed }
}

function changed(was: Filter, { place, nominal, medium, merv }: SheetFilter, note: Note): Filter {
  if (place !== undefined) note('place', was.place, place)
  if (nominal !== undefined) note('size', sizeText(was.nominal), sizeText(nominal))
  if (medium !== undefined) note('kind', was.medium, medium)
  if (merv !== undefined) note('MERV', was.merv, merv)
  return {
    ...was,
    ...(place !== undefined && { place }),
    ...(nominal !== undefined && { nominal }),
    ...(medium !== undefined && { medium }),
    ...(merv !== undefined && { merv }),
  }
}

function newFilter(group: SheetFilter, { id: system, delivery }: System, taken: ReadonlySet<string>): Filter {
  const place = group.place ?? (delivery === 'ductless' ? 'ductless-head' : 'furnace-slot')
  const isScreen = place === 'ductless-head' || place === 'ventilator'
  let id: string = place
  for (let number = 2; taken.has(id); number++) id = `${place}-${number}`
  return {
    ...{ id, system, place },
    nominal: group.nominal ?? (isScreen ? SCREEN_SIZE : USUAL_SIZE),
    medium: group.medium ?? (isScreen ? 'screen' : 'pleated'),
    ...(group.merv !== undefined && { merv: group.merv }),
  }
}
