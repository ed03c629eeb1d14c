// The ustar format of POSIX.1-1988, files only: https://pubs.opengroup.org/onlinepubs/9699919799/utilities/pax.html
// A backup has to be readable without this program, by any `tar -xzf`.

const BLOCK = 512
const NAME_BYTES = 100
const SIZE = 124
const OCTAL_LIMIT = 8 ** 11

/** Not an archive, or not whole. */
export class BrokenArchive extends Error {
  override name = 'BrokenArchive'
}

/** One file for an archive: what `content` gives must be as long as `bytes` says. */
export interface TarFile {
  name: string
  bytes: number
  content: () => AsyncIterable<Uint8Array> | Iterable<Uint8Array>
}

/** What an archive consists of: each file's head, then its content in pieces. */
export type TarPart = { kind: 'file'; name: string; bytes: number } | { kind: 'content'; chunk: Buffer }

/** Whether a name fits: 100 bytes of UTF-8. */
export function fitsInTar(name: string): boolean {
  return Buffer.byteLength(name) <= NAME_BYTES
}

/** Writes files as one archive. Throws where a file's content is not as long as was said. */
export async function* writeTar(files: Iterable<TarFile>): AsyncGenerator<Uint8Array> {
  for (const { name, bytes, content } of files) {
    yield header(name, bytes)
    let written = 0
    for await (const chunk of content()) {
      written += chunk.length
      yield chunk
    }
    if (written !== bytes) throw new BrokenArchive(`${name} changed while it was read.`)
    yield Buffer.alloc(padding(bytes))
  }
  yield Buffer.alloc(2 * BLOCK)
}

/** Reads an archive to its very end. Throws `BrokenArchive`. */
export async function* readTar(source: AsyncIterable<Buffer>): AsyncGenerator<TarPart> {
  const input = source[Symbol.asyncIterator]()
  let held: Buffer = Buffer.alloc(0)

  async function upTo(most: number): Promise<Buffer> {
    while (held.length === 0) {
      const next = await input.next()
      if (next.done) throw new BrokenArchive('it ends too early')
      held = next.value
    }
    const part = held.subarray(0, most)
    held = held.subarray(part.length)
    return part
  }
  async function exactly(length: number): Promise<Buffer> {
    const parts: Buffer[] = []
    for (let left = length; left > 0; left -= parts.at(-1)?.length ?? 0) parts.push(await upTo(left))
    return Buffer.concat(parts)
  }

  for (;;) {
    const block = await exactly(BLOCK)
    if (block.every((byte) => byte === 0)) break
    const { name, bytes } = parseHeader(block)
    yield { kind: 'file', name, bytes }
    for (let left = bytes; left > 0; ) {
      const chunk = await upTo(left)
      left -= chunk.length
      yield { kind: 'content', chunk }
    }
    await exactly(padding(bytes))
  }
  // The checksum of what the archive is packed in stands at the end of it.
  while (!(await input.next()).done);
}

function padding(bytes: number): number {
  return (BLOCK - (bytes % BLOCK)) % BLOCK
}

function octal(value: number, length: number): string {
  return `${value.toString(8).padStart(length - 1, '0')}\0`
}

/** Eleven octal digits; from 8 GiB on a number of eleven bytes behind a first with the top bit set, as GNU and BSD tar write it. */
function writeSize(block: Buffer, bytes: number): void {
  if (bytes < OCTAL_LIMIT) block.write(octal(bytes, 12), SIZE)
  else {
    block[SIZE] = 0x80
    block.writeBigUInt64BE(BigInt(bytes), SIZE + 4)
  }
}

function parseSize(block: Buffer): number | null {
  if (block[SIZE] === 0x80) {
    const bytes = Number(block.readBigUInt64BE(SIZE + 4))
    return block.readUInt32BE(SIZE) === 0x80000000 && Number.isSafeInteger(bytes) ? bytes : null
  }
  const size = block.toString('latin1', SIZE, SIZE + 12).replace(/\0.*$/s, '')
  return /^[0-7]{11} ?$/.test(size) ? Number.parseInt(size, 8) : null
}

function header(name: string, bytes: number): Buffer {
  if (!fitsInTar(name)) throw new RangeError(`too long for an archive: ${name}`)
  const block = Buffer.alloc(BLOCK)
  block.write(name, 0)
  // Mode, user, group, size, moment: a backup holds secrets, so it is its owner's alone.
  block.write(octal(0o600, 8) + octal(0, 8) + octal(0, 8), 100)
  writeSize(block, bytes)
  block.write(octal(0, 12), SIZE + 12)
  block.write('0', 156)
  block.write('ustar\x0000', 257)
  block.write(`${checksum(block).toString(8).padStart(6, '0')}\0 `, 148)
  return block
}

// The sum of all bytes, with its own eight taken as spaces.
function checksum(block: Buffer): number {
  return block.reduce((sum, byte, at) => sum + (at >= 148 && at < 156 ? 32 : byte), 0)
}

function parseHeader(block: Buffer): { name: string; bytes: number } {
  const text = (from: number, to: number) => block.toString('utf8', from, to).replace(/\0.*$/s, '')
  const bytes = parseSize(block)
  const kind = text(156, 157)
  if (Number.parseInt(text(148, 156), 8) !== checksum(block) || !text(257, 263).startsWith('ustar'))
    throw new BrokenArchive('it is not an archive')
  if ((kind !== '0' && kind !== '') || bytes === null) throw new BrokenArchive('it holds more than files')
  return { name: text(0, NAME_BYTES), bytes }
}
