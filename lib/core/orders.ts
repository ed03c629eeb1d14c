import { addDays, type Day } from './day'
import { compareNames } from './home-list'
import type { NominalSize } from './household'
import { nominalFromPrinted } from './nominal-size'
import { kindKey, type SupplyKind, sizeText } from './supplies'

/** The days on which filters of one kind are changed, over all homes. */
export interface Need {
  kind: SupplyKind
  days: Day[]
}

/** What is on the shelf of one kind; `perBox` is at least 1. */
export interface StockLine {
  kind: SupplyKind
  onHand: number
  perBox: number
}

/** One line of an order. */
export interface OrderLine extends StockLine {
  needed: number
  toBuy: number
  /** Whole boxes that hold what is to be bought. */
  boxes: number
  /** The day of the first change for which nothing is left on the shelf; null where there is enough. */
  shortOn: Day | null
  /** That day less the lead time; it may be past. */
  orderBy: Day | null
}

/** Needs from many homes as one list by size, with what the shelf already holds. Kinds on the shelf that nobody needs stay in it. */
export function orderLines(
  needs: readonly Need[],
  stock: readonly StockLine[],
  { on, until, leadDays }: { on: Day; until: Day; leadDays: number },
): OrderLine[] {
  const lines = new Map<string, StockLine & { days: Day[] }>()
  for (const line of stock) lines.set(kindKey(line.kind), { ...line, days: [] })
  for (const { kind, days } of needs) {
    const within = days.filter((day) => day < until).map((day) => (day < on ? on : day))
    const key = kindKey(kind)
    const line = lines.get(key)
    if (line) line.days.push(...within)
    else if (within.length > 0) lines.set(key, { kind, onHand: 0, perBox: 1, days: within })
  }
  return [...lines.values()]
    .map(({ kind, onHand, perBox, days }) => {
      const toBuy = Math.max(0, days.length - onHand)
      const shortOn = days.toSorted()[onHand] ?? null
      return {
        ...{ kind, onHand, perBox, toBuy, shortOn },
        needed: days.length,
        boxes: Math.ceil(toBuy / perBox),
        orderBy: shortOn === null ? null : addDays(shortOn, -leadDays),
      }
    })
    .sort((a, b) => compareNames(kindKey(a.kind), kindKey(b.kind)))
}

/** The size that shops would know a size by, where it is another: `15.5x24.5x1` is `16x25x1`, and `25x16x1` is the same filter turned. */
export function commonSizeFor(
  size: string,
  commonSizes: readonly NominalSize[],
): { size: string; turned: boolean } | null {
  const [widthIn = 0, heightIn = 0, depthIn = 0] = size.split('x').map(Number)
  const read = nominalFromPrinted({ widthIn, heightIn, depthIn }, commonSizes)
  if (read.kind === 'refused' || !read.isCommon) return null
  const { nominal } = read
  const [short, long] = [Math.min(nominal.widthIn, nominal.heightIn), Math.max(nominal.widthIn, nominal.heightIn)]
  const common = sizeText({ widthIn: short, heightIn: long, depthIn: nominal.depthIn })
  if (common === size) return null
  return { size: common, turned: sizeText(nominal) === size }
}
