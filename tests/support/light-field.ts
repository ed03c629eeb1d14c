import type { LightField } from '@/lib/core/linear-light'

/** The light of a picture, said for each of its points. */
export function fieldOf(width: number, height: number, lightAt: (x: number, y: number) => number): LightField {
  const light = new Float32Array(width * height)
  for (let at = 0; at < light.length; at++) light[at] = lightAt(at % width, Math.floor(at / width))
  return { width, height, light, clipped: new Uint8Array(width * height) }
}
