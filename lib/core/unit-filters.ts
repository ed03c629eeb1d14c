import type { Assumed, Filter, System } from './household'
import { sizeText } from './supplies'
import type { Merging, Note } from './unit-merge'
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
  { system, note, tell, clashes }: Merging & { system: System },
): Merged {
  const filters = [...before]
  const ids: (string | undefined)[] = []
  const assumed: Assumed[] = []
  for (const [i, group] of groups.entries()) {
    const was = before[i]
    if (was) {
      ids.push(was.id)
      const told = <T>(key: keyof typeof CODES, value: T) => tell({ code: CODES[key], subject: was.id }, value)
      filters[i] = changed(was, group, (what, from, to) => note(`filter ${i + 1} ${what}`, from, to), told)
    } else if (Object.keys(group).length === 0) ids.push(undefined)
    else {
      const next = filters.length + 1
      // Added here, it would be another filter's when the sheet is read again.
      if (next <= i) clashes.push(`has filter ${i + 1} but no filter ${next}: write it as filter ${next}`)
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

type Told = <T>(key: keyof typeof CODES, value: T) => T | undefined

function changed(was: Filter, { place, nominal, medium, merv }: SheetFilter, note: Note, told: Told): Filter {
  if (place !== undefined) note('place', told('place', was.place), place)
  if (nominal !== undefined) note('size', told('nominal', sizeText(was.nominal)), sizeText(nominal))
  if (medium !== undefined) note('kind', told('medium', was.medium), medium)
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
