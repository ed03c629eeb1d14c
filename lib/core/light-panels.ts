import { type LightField, quantile } from './linear-light'

/** A box in a picture, in pixels from its upper left corner. */
export interface Box {
  x: number
  y: number
  width: number
  height: number
}

// Panels are sought on a picture of about this width: fine enough for a box, coarse enough to be quick.
const COARSE_WIDTH = 120
const LEAST_SHARE = 0.02
const THRESHOLD_STEPS = 12

interface Region extends Box {
  area: number
}

/** Light that reaches the camera beside the panels: the darker half of the picture's rim. */
export function surroundLight({ width, height, light }: LightField): number {
  const rim: number[] = []
  for (let x = 0; x < width; x++) rim.push(light[x] ?? 0, light[(height - 1) * width + x] ?? 0)
  for (let y = 0; y < height; y++) rim.push(light[y * width] ?? 0, light[y * width + width - 1] ?? 0)
  return quantile(rim, 0.5)
}

/**
 * Finds two bright panels side by side on a dark ground; left one first. Null if there are not exactly two of
 * like size at like height: the person may then draw the boxes.
 */
export function findPanels(field: LightField): readonly [Box, Box] | null {
  const coarse = shrink(field)
  const ground = Math.max(surroundLight(coarse.field), 0.001)
  const top = quantile([...coarse.field.light], 0.98)
  let best: [Region, Region] | null = null
  // The darker panel may hardly be brighter than the ground: every threshold is tried, the one that shows most wins.
  for (let step = 0; step < THRESHOLD_STEPS; step++) {
    const threshold = ground * 1.6 * (top / (ground * 1.6)) ** (step / THRESHOLD_STEPS)
    const pair = pairOf(regionsAbove(coarse.field, threshold))
    if (pair && (best === null || pair[0].area + pair[1].area > best[0].area + best[1].area)) best = pair
  }
  if (best === null) return null
  const [left, right] = best
  return [enlarge(left, coarse.scale), enlarge(right, coarse.scale)]
}

function pairOf(regions: Region[]): [Region, Region] | null {
  const [one, two, third] = regions.sort((a, b) => b.area - a.area)
  if (one === undefined || two === undefined) return null
  if (third !== undefined && third.area > two.area / 2) return null
  const [left, right] = one.x < two.x ? [one, two] : [two, one]
  const overlap = Math.min(left.y + left.height, right.y + right.height) - Math.max(left.y, right.y)
  const isBeside = overlap > 0.6 * Math.min(left.height, right.height)
  const isApart = left.x + left.width <= right.x + 0.3 * right.width
  const isAlike = Math.max(one.area, two.area) <= 2.5 * Math.min(one.area, two.area)
  // A box that is mostly empty is no panel but a rim of light round one.
  const isFull = [one, two].every((region) => region.area > 0.6 * region.width * region.height)
  return isBeside && isApart && isAlike && isFull ? [left, right] : null
}

function regionsAbove({ width, height, light }: LightField, threshold: number): Region[] {
  // 1: bright and not yet in a region. A picture has many pixels: no array is made for any of them.
  const isOpen = new Uint8Array(light.length)
  for (let at = 0; at < light.length; at++) isOpen[at] = (light[at] ?? 0) >= threshold ? 1 : 0
  const stack = new Int32Array(light.length)
  let size = 0
  function reach(next: number) {
    if (isOpen[next] !== 1) return
    isOpen[next] = 0
    stack[size++] = next
  }
  const regions: Region[] = []
  for (let start = 0; start < light.length; start++) {
    if (isOpen[start] !== 1) continue
    reach(start)
    let area = 0
    let left = width
    let right = 0
    let top = height
    let bottom = 0
    while (size > 0) {
      const at = stack[--size] ?? 0
      const x = at % width
      const y = (at - x) / width
      area++
      if (x < left) left = x
      if (x > right) right = x
      if (y < top) top = y
      if (y > bottom) bottom = y
      if (x > 0) reach(at - 1)
      if (x < width - 1) reach(at + 1)
      if (y > 0) reach(at - width)
      if (y < height - 1) reach(at + width)
    }
    if (area >= LEAST_SHARE * light.length) {
      regions.push({ x: left, y: top, width: right - left + 1, height: bottom - top + 1, area })
    }
  }
  return regions
}

/** Means over squares of pixels: noise and pleats are evened out. */
function shrink(field: LightField): { field: LightField; scale: number } {
  const scale = Math.max(1, Math.floor(field.width / COARSE_WIDTH))
  const [width, height] = [Math.floor(field.width / scale), Math.floor(field.height / scale)]
  if (scale === 1 || width < 1 || height < 1) return { field, scale: 1 }
  const light = new Float32Array(width * height)
  for (let y = 0; y < height * scale; y++) {
    for (let x = 0; x < width * scale; x++) {
      const to = Math.floor(y / scale) * width + Math.floor(x / scale)
      light[to] = (light[to] ?? 0) + (field.light[y * field.width + x] ?? 0) / (scale * scale)
    }
  }
  return { field: { width, height, light, clipped: new Uint8Array(width * height) }, scale }
}

function enlarge({ x, y, width, height }: Region, scale: number): Box {
  return { x: x * scale, y: y * scale, width: width * scale, height: height * scale }
}
