import type { NominalSize } from '@/lib/core/household'
import type { Mark } from '@/lib/core/tables'

export interface CommonSizeRow extends NominalSize {
  mark: Mark
}

/**
 * Nominal sizes that shops commonly stock, in inches, the shorter side first. Common practice, from memory:
 * no standard fixes which sizes a shop keeps, and the list only tells "common" from "to order".
 */
const SIDES_BY_DEPTH: Record<number, readonly (readonly [number, number])[]> = {
  1: [
    [10, 10],
    [10, 20],
    [10, 30],
    [12, 12],
    [12, 18],
    [12, 20],
    [12, 24],
    [12, 25],
    [12, 30],
    [12, 36],
    [14, 14],
    [14, 18],
    [14, 20],
    [14, 24],
    [14, 25],
    [14, 30],
    [15, 20],
    [16, 16],
    [16, 18],
    [16, 20],
    [16, 24],
    [16, 25],
    [16, 30],
    [18, 18],
    [18, 20],
    [18, 24],
    [18, 25],
    [18, 30],
    [20, 20],
    [20, 22],
    [20, 24],
    [20, 25],
    [20, 30],
    [22, 22],
    [24, 24],
    [24, 30],
    [25, 25],
  ],
  2: [
    [10, 20],
    [12, 20],
    [12, 24],
    [14, 20],
    [14, 25],
    [15, 20],
    [16, 16],
    [16, 20],
    [16, 24],
    [16, 25],
    [18, 18],
    [18, 20],
    [18, 24],
    [18, 25],
    [20, 20],
    [20, 24],
    [20, 25],
    [20, 30],
    [24, 24],
  ],
  4: [
    [12, 24],
    [14, 25],
    [16, 20],
    [16, 25],
    [18, 24],
    [20, 20],
    [20, 24],
    [20, 25],
    [24, 24],
  ],
  5: [
    [16, 20],
    [16, 25],
    [20, 20],
    [20, 25],
    [24, 25],
  ],
}

export const commonSizes: readonly CommonSizeRow[] = Object.entries(SIDES_BY_DEPTH).flatMap(([depth, sides]) =>
  sides.map(([widthIn, heightIn]): CommonSizeRow => ({ widthIn, heightIn, depthIn: Number(depth), mark: 'P' })),
)
