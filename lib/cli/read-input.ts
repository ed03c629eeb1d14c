import { open } from 'node:fs/promises'
import { FILE_LIMIT_BYTES } from '@/lib/forms/household-file'

/**
 * The bytes of a file or of standard input (`-`). Reading stops just past the limit: what comes back is then too long
 * for the parser, which says so, and a file of any size costs no more memory than that.
 */
export async function readInput(file: string, stdin: AsyncIterable<Uint8Array>): Promise<Uint8Array> {
  if (file === '-') return upToLimit(stdin)
  const handle = await open(file)
  try {
    return await upToLimit(handle.createReadStream({ autoClose: false }))
  } finally {
    await handle.close()
  }
}

async function upToLimit(stream: AsyncIterable<Uint8Array>): Promise<Uint8Array> {
  const chunks: Uint8Array[] = []
  let length = 0
  for await (const chunk of stream) {
    chunks.push(chunk)
    length += chunk.length
    if (length > FILE_LIMIT_BYTES) break
  }
  return Buffer.concat(chunks)
}

/** `cannot be read: there is no such file`. */
export function unreadable(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code
  const why =
    code === 'ENOENT'
      ? 'there is no such file'
      : code === 'EISDIR'
        ? 'it is a folder'
        : code === 'EACCES'
          ? 'this account may not read it'
          : (error as Error).message
  return `cannot be read: ${why}`
}
