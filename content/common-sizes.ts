import type { NominalSize } from '@/lib/core/household'
export const commonSizes: readonly NominalSize[] = [
  [16, 20],
  [16, 25],
  [20, 20],
  [20, 25],
  [20, 30],
  [24, 24],
  [14, 20],
  [14, 25],
].map(([widthIn, heightIn]) => ({ widthIn: widthIn!, heightIn: heightIn!, depthIn: 1 }))
