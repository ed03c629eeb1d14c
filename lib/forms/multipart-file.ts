/** The upload ended before the form did. */
export class CutOff extends Error {}

/** The text between the parts of a form, from its `content-type`; null where it is no such form. */
export function boundaryOf(contentType: string | null): string | null {
  const found = /^multipart\/form-data\s*;.*\bboundary=(?:"([^"]{1,70})"|([^\s;]{1,70}))/i.exec(contentType ?? '')
  return found?.[1] ?? found?.[2] ?? null
}

const MOST_HEADER_BYTES = 16 * 1024

/**
 * The bytes of the first file in a sent form, as they come in: nothing is kept, so that a file of any size passes.
 * Nothing comes where the form has no file. Throws `CutOff` where the form ends in the middle.
 */
export async function* fileInForm(chunks: AsyncIterable<Uint8Array>, boundary: string): AsyncGenerator<Uint8Array> {
  // A part begins after a line of its own; the very first has none before it.
  const edge = Buffer.from(`\r\n--${boundary}`)
  let held: Buffer = Buffer.from('\r\n')
  let state: 'between' | 'header' | 'file' = 'between'
  for await (const chunk of chunks) {
    held = Buffer.concat([held, chunk])
    for (;;) {
      if (state === 'between') {
        const at = held.indexOf(edge)
        if (at < 0) {
          held = held.subarray(Math.max(0, held.length - edge.length))
          break
        }
        held = held.subarray(at + edge.length)
        state = 'header'
      } else if (state === 'header') {
        if (held.length >= 2 && held.toString('latin1', 0, 2) === '--') return
        const end = held.indexOf('\r\n\r\n')
        if (end < 0) {
          if (held.length > MOST_HEADER_BYTES) throw new CutOff()
          break
        }
        const isFile = /\bfilename\*?=/i.test(held.toString('latin1', 0, end))
        // What follows a part without a file may begin with the next edge at once.
        held = held.subarray(isFile ? end + 4 : end + 2)
        state = isFile ? 'file' : 'between'
      } else {
        const at = held.indexOf(edge)
        if (at >= 0) {
          if (at > 0) yield held.subarray(0, at)
          return
        }
        const safe = held.length - edge.length + 1
        if (safe > 0) {
          yield held.subarray(0, safe)
          held = held.subarray(safe)
        }
        break
      }
    }
  }
  throw new CutOff()
}
