import sharp from 'sharp'

/** A picture as it is kept: WebP, upright, at most 1600 pixels a side, with nothing in it but the pixels. */
export interface Picture {
  webp: Buffer
  width: number
  height: number
}

export const PICTURE_FAULTS = ['empty', 'no-picture', 'broken', 'too-many-pixels', 'too-small'] as const
export type PictureFault = (typeof PICTURE_FAULTS)[number]

const LONGEST_SIDE_PX = 1600
const LEAST_SIDE_PX = 16
// A phone's largest picture has about 50 million; a file of a few kB may claim a thousand times that.
const MOST_PIXELS = 64_000_000
const SECONDS = 20

/** By content, never by name. SVG and everything else that can hold instructions is not here, and is never decoded. */
const KINDS: { format: string; starts: (head: Buffer) => boolean }[] = [
  { format: 'jpeg', starts: (head) => head[0] === 0xff && head[1] === 0xd8 && head[2] === 0xff },
  { format: 'png', starts: (head) => head.subarray(0, 8).equals(Buffer.from('89504e470d0a1a0a', 'hex')) },
  {
    format: 'webp',
    starts: (head) => head.toString('latin1', 0, 4) === 'RIFF' && head.toString('latin1', 8, 12) === 'WEBP',
  },
  { format: 'heif', starts: (head) => /^ftyp(avif|avis|mif1)$/.test(head.toString('latin1', 4, 12)) },
]

let last: Promise<unknown> = Promise.resolve()

/**
 * Makes the picture to keep out of whatever was sent: decoded and encoded anew, so that no place, time, camera name
 * or hidden text of the sent file is left. One at a time: decoding is what costs memory.
 */
export function keepablePicture(sent: Buffer): Promise<Picture | PictureFault> {
  const turn = last.then(
    () => reencode(sent),
    () => reencode(sent),
  )
  last = turn
  return turn
}

async function reencode(sent: Buffer): Promise<Picture | PictureFault> {
  if (sent.length === 0) return 'empty'
  const kind = KINDS.find(({ starts }) => starts(sent))
  if (!kind) return 'no-picture'
  try {
    const { format, width, height } = await sharp(sent, { limitInputPixels: false }).metadata()
    if (format !== kind.format) return 'no-picture'
    if (width * height > MOST_PIXELS) return 'too-many-pixels'
    if (Math.min(width, height) < LEAST_SIDE_PX) return 'too-small'
    const { data, info } = await sharp(sent, { limitInputPixels: MOST_PIXELS, failOn: 'error', pages: 1 })
      .autoOrient()
      .resize({ width: LONGEST_SIDE_PX, height: LONGEST_SIDE_PX, fit: 'inside', withoutEnlargement: true })
      .webp({ quality: 80 })
      .timeout({ seconds: SECONDS })
      .toBuffer({ resolveWithObject: true })
    return { webp: data, width: info.width, height: info.height }
  } catch {
    // The library's own words name its parts; a person needs to know only that the file is damaged.
    return 'broken'
  }
}
