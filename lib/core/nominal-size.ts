import { inches as inchesInWords, sizeInWords } from './filter-words'
import type { NominalSize } from './household'
import { faultsOf, type SizeFault } from './size-faults'

/**
 * A filter's nominal size from what is printed on its frame or measured on it. Everything is inches; a caller
 * that reads metric converts first. Width and height may come either way round and stay as they came.
 */

export const SIZE_NOTES = ['not-common', 'two-fit', 'full-size', 'printed-is-actual', 'fraction', 'odd-depth'] as const
export type SizeNoteCode = (typeof SIZE_NOTES)[number]

export interface SizeNote {
  code: SizeNoteCode
  say: string
}

export type SizeAnswer =
  | {
      kind: 'nominal'
      nominal: NominalSize
      /** Another nominal size that what was printed or measured also fits. */
      second: NominalSize | null
      /** The common size closest to `nominal`, of the same depth if there is one; null only for an empty table. */
      nearest: NominalSize | null
      isCommon: boolean
      notes: SizeNote[]
    }
  | { kind: 'refused'; faults: SizeFault[] }

/** How far a tape may be off, in inches [C]: 16 1/16 is read as 16. */
export const TAPE_TOLERANCE_IN = 1 / 16

// A frame this little above a whole inch may be that inch, swollen or misread [C].
const DOUBT_IN = 1 / 4

// Frames run smaller than their name by up to this much, half an inch most often [P].
const UNDERSIZE_IN = 3 / 4

const SIDES = ['widthIn', 'heightIn', 'depthIn'] as const

/**
 * `nominalFromMeasured({ widthIn: 15.5, heightIn: 24.5, depthIn: 0.75 }, commonSizes)` is 16 × 25 × 1.
 * Each side goes up to the next whole inch [P]: nominal is never more than `TAPE_TOLERANCE_IN` below measured.
 */
export function nominalFromMeasured(measured: NominalSize, commonSizes: readonly NominalSize[]): SizeAnswer {
  const faults = faultsOf(measured)
  if (faults.length > 0) return { kind: 'refused', faults }
  const nominal = roundUp(measured)
  const lower = mapSides(measured, (inches) => (isDoubtful(inches) ? Math.floor(inches) : up(inches)))
  const second = sameSize(lower, nominal) || faultsOf(lower).length > 0 ? null : lower
  const notes: SizeNote[] = []
  if (second !== null) {
    notes.push({
      code: 'two-fit',
      say: `Two sizes may fit: ${sizeInWords(nominal)} and ${sizeInWords(second)}. Measure again, from edge to edge of the frame.`,
    })
  }
  if (isWhole(measured.widthIn) && isWhole(measured.heightIn)) {
    notes.push({
      code: 'full-size',
      say: 'Most frames are about half an inch smaller than their name. Yours is not. Check that you measured the filter, not the opening.',
    })
  }
  return withCommon({ nominal, second, notes, commonSizes })
}

/**
 * What the frame says. Whole inches are the nominal size. Fractions may be the frame's actual size, which is
 * often printed too: `nominalFromPrinted({ widthIn: 15.5, heightIn: 24.5, depthIn: 0.75 }, commonSizes)` is
 * 16 × 25 × 1 with what was printed as the second candidate; sides that no common size explains stay as printed.
 */
export function nominalFromPrinted(printed: NominalSize, commonSizes: readonly NominalSize[]): SizeAnswer {
  const faults = faultsOf(printed)
  if (faults.length > 0) return { kind: 'refused', faults }
  const rounded = roundUp(printed)
  if (isWhole(printed.widthIn) && isWhole(printed.heightIn)) {
    return withCommon({ nominal: rounded, second: null, notes: [], commonSizes })
  }
  const asPrinted = { ...printed, depthIn: rounded.depthIn }
  const isActual = isFrameOf(printed, rounded) && findCommon(rounded, commonSizes) !== undefined
  const note: SizeNote = isActual
    ? {
        code: 'printed-is-actual',
        say: `${sizeInWords(printed)} looks like the size of the frame itself. Shops call it ${sizeInWords(rounded)}. Look for that on the frame too.`,
      }
    : {
        code: 'fraction',
        say: 'A size with fractions is rare. Read it again. If it is printed so, order just that.',
      }
  return withCommon({
    nominal: isActual ? rounded : asPrinted,
    second: isActual ? asPrinted : rounded,
    notes: [note],
    commonSizes,
  })
}

/** The common size nearest in sides, among those of the same depth if there are any; it keeps the asked orientation. */
export function findNearestCommon(size: NominalSize, commonSizes: readonly NominalSize[]): NominalSize | null {
  // A filter of another depth does not sit in the same slot, so a depth's inch counts more than any side's.
  const turned = commonSizes.map((common) => turnLike(common, size))
  const distance = (common: NominalSize) =>
    100 * Math.abs(common.depthIn - size.depthIn) +
    Math.abs(common.widthIn - size.widthIn) +
    Math.abs(common.heightIn - size.heightIn)
  return turned.reduce<NominalSize | null>(
    (best, common) => (best === null || distance(common) < distance(best) ? common : best),
    null,
  )
}

function withCommon(found: {
  nominal: NominalSize
  second: NominalSize | null
  notes: SizeNote[]
  commonSizes: readonly NominalSize[]
}): SizeAnswer {
  const { nominal, second, commonSizes } = found
  const notes = [...found.notes]
  const isCommon = findCommon(nominal, commonSizes) !== undefined
  const nearest = findNearestCommon(nominal, commonSizes)
  if (!isCommon && nearest !== null) {
    notes.push({
      code: 'not-common',
      say: `${sizeInWords(nominal)} is not on our list of common sizes. The nearest is ${sizeInWords(nearest)}, which is not the same filter. Measure once more, then order ${sizeInWords(nominal)} by name.`,
    })
  }
  if (!commonSizes.some((common) => common.depthIn === nominal.depthIn)) {
    notes.push({
      code: 'odd-depth',
      say: `A depth of ${inchesInWords(nominal.depthIn)} inches is rare. Measure the thin side once more.`,
    })
  }
  return { kind: 'nominal', nominal, second, nearest, isCommon, notes }
}

function findCommon(size: NominalSize, commonSizes: readonly NominalSize[]): NominalSize | undefined {
  return commonSizes.find((common) => sameSize(turnLike(common, size), size))
}

// The common sizes are kept shorter side first; the person's way round wins.
function turnLike(common: NominalSize, like: NominalSize): NominalSize {
  const [short, long] = [Math.min(common.widthIn, common.heightIn), Math.max(common.widthIn, common.heightIn)]
  return like.widthIn <= like.heightIn
    ? { widthIn: short, heightIn: long, depthIn: common.depthIn }
    : { widthIn: long, heightIn: short, depthIn: common.depthIn }
}

function roundUp(size: NominalSize): NominalSize {
  return mapSides(size, up)
}

// 3/4 deep is sold as 1; 1 3/4 as 2; 3 5/8 and 3 3/4 as 4; 4 3/8 and 4 7/8 as 5 [P].
function up(inches: number): number {
  return Math.ceil(inches - TAPE_TOLERANCE_IN)
}

function isWhole(inches: number): boolean {
  return Math.abs(inches - Math.round(inches)) <= TAPE_TOLERANCE_IN
}

// Over by no more than a tape's error it may be that inch too, and `up` says the same.
function isDoubtful(inches: number): boolean {
  return inches - Math.floor(inches) < DOUBT_IN
}

function isFrameOf(actual: NominalSize, nominal: NominalSize): boolean {
  return (['widthIn', 'heightIn'] as const).every((side) => nominal[side] - actual[side] <= UNDERSIZE_IN)
}

function mapSides(size: NominalSize, change: (inches: number) => number): NominalSize {
  return { widthIn: change(size.widthIn), heightIn: change(size.heightIn), depthIn: change(size.depthIn) }
}

function sameSize(a: NominalSize, b: NominalSize): boolean {
  return SIDES.every((side) => a[side] === b[side])
}
