import type { LightField, Picture } from '@/lib/core/linear-light'

/** The light of a picture, said for each of its points. */
export function fieldOf(width: number, height: number, lightAt: (x: number, y: number) => number): LightField {
  const light = new Float32Array(width * height)
  for (let at = 0; at < light.length; at++) light[at] = lightAt(at % width, Math.floor(at / width))
  return { width, height, light, clipped: new Uint8Array(width * height) }
}

/** The same as a camera writes it: grey bytes on the sRGB curve (IEC 61966-2-1, from memory). */
export function pictureOf(width: number, height: number, lightAt: (x: number, y: number) => number): Picture {
  const rgba = new Uint8ClampedArray(4 * width * height)
  for (let at = 0; at < width * height; at++) {
    const light = lightAt(at % width, Math.floor(at / width))
    const byte = 255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055)
    rgba.set([byte, byte, byte, 255], 4 * at)
  }
  return { width, height, rgba }
}
