import type { Picture } from '@/lib/core/linear-light'

/** A rendered picture of two panels before a lamp, with everything known. Lengths are shares of the picture's width. */
export interface LightScene {
  width: number
  /** Light through this filter over light through the reference. */
  ratio: number
  side: 'left' | 'right'
  /** Linear light of the reference at the lamp's middle; above 1 it clips. */
  exposure: number
  /** Linear light of the dark surround. */
  ground: number
  /** Standard deviation of the camera's noise, in 8-bit steps. */
  noise: number
  rotationDegrees: number
  /** How much larger the right edge is drawn than the left: a picture taken at a slant. */
  tilt: number
  gap: number
  blur: number
  /** Where the lamp's middle is, 0 behind the gap, and how wide it shines. */
  lampX: number
  lampWidth: number
  pleats: number
  /** How far the camera bends its curve towards more contrast, 0–1; sRGB alone at 0. */
  tone: number
  seed: number
}

export const PLAIN_SCENE: LightScene = {
  width: 240,
  ratio: 0.5,
  side: 'left',
  exposure: 0.6,
  ground: 0.01,
  noise: 2,
  rotationDegrees: 0,
  tilt: 0,
  gap: 0.06,
  blur: 0,
  lampX: 0,
  lampWidth: 1.2,
  pleats: 0.25,
  tone: 0,
  seed: 1,
}

const PANEL = { width: 0.3, height: 0.42 }

export function renderLightScene(scene: LightScene): Picture {
  const [width, height] = [scene.width, Math.round(scene.width * 0.75)]
  const random = randomOf(scene.seed)
  let light: Float64Array = new Float64Array(width * height)
  for (let py = 0; py < height; py++) {
    for (let px = 0; px < width; px++)
      light[py * width + px] = sceneLight(scene, px / width - 0.5, (py - height / 2) / width)
  }
  const radius = Math.round(scene.blur * width)
  // Three box blurs come close to a Gaussian one.
  if (radius > 0) for (let pass = 0; pass < 3; pass++) light = boxBlur(light, width, height, radius)
  const rgba = new Uint8ClampedArray(width * height * 4)
  for (let pixel = 0; pixel < light.length; pixel++) {
    const level = 255 * toned(encoded(light[pixel] ?? 0), scene.tone)
    rgba[4 * pixel] = level + scene.noise * normal(random)
    rgba[4 * pixel + 1] = level + scene.noise * normal(random)
    rgba[4 * pixel + 2] = level + scene.noise * normal(random)
    rgba[4 * pixel + 3] = 255
  }
  return { width, height, rgba }
}

function sceneLight(scene: LightScene, px: number, py: number): number {
  const turn = (scene.rotationDegrees * Math.PI) / 180
  const rx = px * Math.cos(turn) + py * Math.sin(turn)
  const scale = 1 + scene.tilt * rx
  const x = rx / scale
  const y = (-px * Math.sin(turn) + py * Math.cos(turn)) / scale
  const isLeft = x < 0
  const into = Math.abs(x) - scene.gap / 2
  if (into < 0 || into > PANEL.width || Math.abs(y) > PANEL.height / 2) return scene.ground
  const lamp = Math.exp(-((x - scene.lampX) ** 2 + y ** 2) / (2 * scene.lampWidth ** 2))
  const pleat = 1 - scene.pleats * (0.5 + 0.5 * Math.cos((into * 2 * Math.PI) / 0.02))
  const through = isLeft === (scene.side === 'left') ? scene.ratio : 1
  return scene.ground + scene.exposure * lamp * pleat * through
}

function toned(value: number, tone: number): number {
  const inside = Math.min(1, value)
  return inside + tone * (inside * inside * (3 - 2 * inside) - inside)
}

function encoded(linear: number): number {
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055
}

function boxBlur(from: Float64Array, width: number, height: number, radius: number): Float64Array {
  return along(along(from, width, height, radius, true), width, height, radius, false)
}

function along(from: Float64Array, width: number, height: number, radius: number, isRow: boolean): Float64Array {
  const to = new Float64Array(from.length)
  const [lines, length] = isRow ? [height, width] : [width, height]
  const at = (line: number, index: number) => {
    const inside = Math.min(length - 1, Math.max(0, index))
    return isRow ? line * width + inside : inside * width + line
  }
  for (let line = 0; line < lines; line++) {
    let sum = 0
    for (let index = -radius; index <= radius; index++) sum += from[at(line, index)] ?? 0
    for (let index = 0; index < length; index++) {
      to[at(line, index)] = sum / (2 * radius + 1)
      sum += (from[at(line, index + radius + 1)] ?? 0) - (from[at(line, index - radius)] ?? 0)
    }
  }
  return to
}

/** Mulberry32: numbers that repeat from one run to the next. */
export function randomOf(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
}
