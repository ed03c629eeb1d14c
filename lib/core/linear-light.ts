/** A picture as the browser's canvas gives it: four bytes a pixel, sRGB, row by row. */
export interface Picture {
  width: number
  height: number
  rgba: Uint8Array | Uint8ClampedArray
}

/** The light of each pixel, 0–1 in proportion to energy, and which pixels were too bright to tell. */
export interface LightField {
  width: number
  height: number
  light: Float32Array
  clipped: Uint8Array
}

// At 250 and above a camera's curve is so flat that the light can no longer be told.
const CLIPPED_FROM = 250

const LINEAR = Float32Array.from({ length: 256 }, (_, byte) => linearOf(byte / 255))

/** The sRGB curve undone, 0–1 to 0–1: `linearOf(0.5)` is about 0.214. Source: IEC 61966-2-1, from memory. */
export function linearOf(encoded: number): number {
  return encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4
}

/** Luminance of every pixel (weights of Rec. 709, from memory). Throws if the bytes do not fill the picture. */
export function lightField({ width, height, rgba }: Picture): LightField {
  if (width < 1 || height < 1 || rgba.length !== width * height * 4) {
    throw new RangeError(`${rgba.length} bytes are no picture of ${width} × ${height}`)
  }
  const light = new Float32Array(width * height)
  const clipped = new Uint8Array(width * height)
  for (let pixel = 0; pixel < light.length; pixel++) {
    const red = rgba[4 * pixel] ?? 0
    const green = rgba[4 * pixel + 1] ?? 0
    const blue = rgba[4 * pixel + 2] ?? 0
    light[pixel] = 0.2126 * (LINEAR[red] ?? 0) + 0.7152 * (LINEAR[green] ?? 0) + 0.0722 * (LINEAR[blue] ?? 0)
    if (Math.max(red, green, blue) >= CLIPPED_FROM) clipped[pixel] = 1
  }
  return { width, height, light, clipped }
}

/** The value below which the given share of a list lies; 0 for an empty list. Sorts the list. */
export function quantile(values: number[], share: number): number {
  values.sort((a, b) => a - b)
  return values[Math.min(values.length - 1, Math.floor(share * values.length))] ?? 0
}
