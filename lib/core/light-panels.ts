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
  // The darker panel may hardly be brighter than the ground. The lower the threshold, the more is seen of two regions
  // and the sooner they are one: the first that shows a pair shows most of it.
  for (let step = 0; step < THRESHOLD_STEPS; step++) {
    const threshold = ground * 1.6 * (top / (ground * 1.6)) ** (step / THRESHOLD_STEPS)
    const pair = pairOf(regionsAbove(coarse.field, threshold))
    if (pair) return [enlarge(pair[0], coarse.scale), enlarge(pair[1], coarse.scale)]
  }
  return null
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

function regionsAbove({ width, light }: LightField, threshold: number): Region[] {
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
    // Rows are gone through from above: none of its points lies higher than the first.
    const top = Math.floor(start / width)
    let bottom = top
    while (size > 0) {
      const at = stack[--size] ?? 0
      const x = at % width
      const y = (at - x) / width
      area++
      left = Math.min(left, x)
      right = Math.max(right, x)
      bottom = Math.max(bottom, y)
      if (x > 0) reach(at - 1)
      if (x < width - 1) reach(at + 1)
      // Above the first row and below the last there is nothing to reach.
      reach(at - width)
      reach(at + width)
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
