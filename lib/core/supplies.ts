import type { FilterInAir } from './air-path'
import { addMonths, type DayNumber, dayNumber, dayText } from './day'
import { nextDue } from './filter'
import type { NominalSize } from './household'
import type { Theta } from './learning'
import type { Supply } from './plan-types'
import type { SystemDays } from './system-days'

/** One filter that is bought, and when it is next due. */
export interface Bought {
  f: FilterInAir
  days: SystemDays
  theta: Theta
  due: DayNumber
}

/** `16x25x1`. */
export function sizeText({ widthIn, heightIn, depthIn }: NominalSize): string {
  return `${widthIn}x${heightIn}x${depthIn}`
}

/** The changes of one filter from `on` for so many calendar months, each restarting the model; what is overdue counts on `on`. */
export function changesWithin(bought: Bought, on: DayNumber, months: number): DayNumber[] {
  const end = dayNumber(addMonths(dayText(on), months))
  const changes: DayNumber[] = []
  for (let day = Math.max(on, bought.due); day < end; day = nextDue(bought.f, bought.days, bought.theta, day))
    changes.push(day)
  return changes
}

/** What is asked for in a shop: one line of an order. */
export type SupplyKind = Omit<Supply, 'count'>

/** The kind of a filter; one whose rating is not known counts as the assumed one where its kind has ratings. */
export function supplyKind({ f: { filter } }: Pick<Bought, 'f'>, assumedMerv: number): SupplyKind {
  const isRated = filter.medium === 'pleated' || filter.medium === 'media'
  return { size: sizeText(filter.nominal), medium: filter.medium, merv: filter.merv ?? (isRated ? assumedMerv : null) }
}

/** `16x25x1 pleated 8`: one text for each kind. */
export function kindKey({ size, medium, merv }: SupplyKind): string {
  return `${size} ${medium} ${merv}`
}

/** Adds one filter's need to the list, kept by size, medium and rating. */
export function addSupply(supplies: Map<string, Supply>, bought: Bought, count: number, assumedMerv: number): void {
  const kind = supplyKind(bought, assumedMerv)
  const key = kindKey(kind)
  const known = supplies.get(key)
  if (known) known.count += count
  else if (count > 0) supplies.set(key, { ...kind, count })
}

/** The order of a list of supplies. */
export function bySize(a: Supply, b: Supply): number {
  return compare(a.size, b.size) || compare(a.medium, b.medium) || (a.merv ?? 0) - (b.merv ?? 0)
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}

/** Washed filters and screens are not bought. */
export function isBought(f: FilterInAir): boolean {
  return f.filter.medium !== 'washable' && f.filter.medium !== 'screen'
}
