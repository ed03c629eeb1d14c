import type { Box } from './light-panels'
import { type LightField, quantile } from './linear-light'

/** What one panel shows. */
export interface PanelLight {
  /** Mean light of the inner part, 0–1. */
  mean: number
  /** Share of pixels too bright to tell. */
  clipped: number
  /** Brightest over darkest of nine fields. */
  unevenness: number
  /** How ln(light) grows to the right, per pixel. */
  slope: number
  /** Standard error of ln(mean), from the nine fields. */
  error: number
}

// The rim of a panel holds the frame, and at a slant some ground.
const RIM = 0.18

/** Measures the inner part of a box. A box must lie in the picture: see `clampBox`. */
export function panelLight(field: LightField, box: Box): PanelLight {
  const inner: Box = {
    x: box.x + box.width * RIM,
    y: box.y + box.height * RIM,
    width: box.width * (1 - 2 * RIM),
    height: box.height * (1 - 2 * RIM),
  }
  const cells = [0, 1, 2].flatMap((row) => [0, 1, 2].map((column) => cellMean(field, inner, row, column)))
  const means = cells.map((cell) => Math.max(cell.mean, 1e-5))
  const mean = means.reduce((sum, value) => sum + value, 0) / 9
  const columns = [0, 1, 2].map((column) => Math.log(at(means, column) + at(means, column + 3) + at(means, column + 6)))
  const deviation = Math.sqrt(means.reduce((sum, value) => sum + (value / mean - 1) ** 2, 0) / 8)
  return {
    mean,
    clipped: cells.reduce((sum, cell) => sum + cell.clipped, 0) / 9,
    unevenness: Math.max(...means) / Math.min(...means),
    slope: (at(columns, 2) - at(columns, 0)) / ((2 / 3) * inner.width),
    error: deviation / 3,
  }
}

/**
 * How wide the panels' outer edges are, as a share of a panel's width: the median distance, going in from
 * outside, from a fifth to four fifths of the panel's light. Null where no dark ground is seen beside a panel. A box
 * must lie in the picture.
 */
export function edgeWidth(field: LightField, box: Box, mean: number, outward: -1 | 1): number | null {
  const widths: number[] = []
  for (let part = 0.3; part <= 0.7; part += 0.02) {
    const y = Math.round(box.y + part * box.height)
    const edge = outward < 0 ? box.x : box.x + box.width
    const start = Math.round(Math.min(field.width - 1, Math.max(0, edge + outward * 0.5 * box.width)))
    const width = riseFrom({ field, y, start, step: -outward, reach: Math.round(box.width), mean })
    if (width !== null) widths.push(width / box.width)
  }
  return widths.length < 5 ? null : quantile(widths, 0.5)
}

/** A box cut to the picture; null if less than 8 pixels a side are left, or it is no box. */
export function clampBox(field: LightField, box: Box): Box | null {
  const [x, y] = [Math.max(0, box.x), Math.max(0, box.y)]
  const width = Math.min(field.width, box.x + box.width) - x
  const height = Math.min(field.height, box.y + box.height) - y
  return width >= 8 && height >= 8 ? { x, y, width, height } : null
}

function riseFrom(walk: {
  field: LightField
  y: number
  start: number
  step: number
  reach: number
  mean: number
}): number | null {
  const { field, y, start, step, reach, mean } = walk
  const lightAt = (x: number) => {
    let sum = 0
    for (const down of [-1, 0, 1]) {
      sum += field.light[(y + down) * field.width + x] ?? 0
    }
    return sum / 3
  }
  const ground = lightAt(start)
  if (ground > mean / 2) return null
  let low: number | null = null
  for (let gone = 0; gone <= reach; gone++) {
    const x = start + step * gone
    const share = (lightAt(x) - ground) / (mean - ground)
    if (low === null && share > 0.2) low = gone
    if (share > 0.8) return low === null ? null : gone - low
  }
  return null
}

function cellMean(field: LightField, inner: Box, row: number, column: number): { mean: number; clipped: number } {
  const [fromX, toX] = [inner.x + (column / 3) * inner.width, inner.x + ((column + 1) / 3) * inner.width]
  const [fromY, toY] = [inner.y + (row / 3) * inner.height, inner.y + ((row + 1) / 3) * inner.height]
  let [sum, clipped, count] = [0, 0, 0]
  for (let y = Math.floor(fromY); y < toY; y++) {
    for (let x = Math.floor(fromX); x < toX; x++) {
      sum += field.light[y * field.width + x] ?? 0
      clipped += field.clipped[y * field.width + x] ?? 0
      count++
    }
  }
  return { mean: sum / count, clipped: clipped / count }
}

function at(values: number[], index: number): number {
  return values[index] ?? 0
}
