import sharp from 'sharp'

/** A small picture as a phone sends it. */
export function aPicture(): Promise<Buffer> {
  return sharp({ create: { width: 120, height: 80, channels: 3, background: '#888888' } })
    .jpeg()
    .toBuffer()
}
