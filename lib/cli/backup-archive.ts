import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { createGunzip } from 'node:zlib'
import { type BackupManifest, parseBackupManifest } from '@/lib/forms/backup-manifest'
import { Refused } from './refused'
import { BrokenArchive, readTar, type TarPart } from './tar'

export const MANIFEST = 'manifest.json'
/** The database's name in a backup, whatever it is called outside. */
export const DATABASE = 'plenum.db'
const MANIFEST_LIMIT_BYTES = 64 * 1024 * 1024

/** Where the files of a backup are put as they are read: nothing counts before all of them are. */
export interface Sink {
  begin(manifest: BackupManifest): void
  open(name: string): void
  write(chunk: Buffer): void
  close(): void
}

const NOWHERE: Sink = { begin() {}, open() {}, write() {}, close() {} }

/**
 * Reads a backup from its first byte to its last, and compares every file with what the manifest says of it. Throws
 * `Refused` for anything that is not a whole backup; what the sink got until then is worth nothing.
 */
export async function readBackup(file: string, sink = NOWHERE): Promise<BackupManifest> {
  const source = createReadStream(file)
  try {
    const unpacked = createGunzip()
    // `pipe` passes no error on.
    source.on('error', (error) => unpacked.destroy(error))
    return await follow(readTar(source.pipe(unpacked)), sink)
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException
    if (error instanceof BrokenArchive || code?.startsWith('Z_')) {
      throw new Refused(`${file} is not a whole backup (${message}). Take another one; nothing was written.`)
    }
    throw error
  } finally {
    source.destroy()
  }
}

async function follow(parts: AsyncGenerator<TarPart>, sink: Sink): Promise<BackupManifest> {
  const manifest = await readManifest(parts)
  sink.begin(manifest)
  const left = [...manifest.files]
  let current: BackupManifest['files'][number] | undefined
  let hash = createHash('sha256')
  function finish(): void {
    if (!current) return
    sink.close()
    if (hash.digest('hex') !== current.sha256) throw new BrokenArchive(`${current.name} was changed`)
  }
  for await (const part of parts) {
    if (part.kind === 'content') {
      hash.update(part.chunk)
      sink.write(part.chunk)
      continue
    }
    finish()
    current = left.shift()
    if (part.name !== current?.name || part.bytes !== current.bytes)
      throw new BrokenArchive(`it holds ${JSON.stringify(part.name)}, which it does not announce`)
    hash = createHash('sha256')
    sink.open(current.name)
  }
  finish()
  if (left[0]) throw new BrokenArchive(`${left[0].name} is missing`)
  return manifest
}

async function readManifest(parts: AsyncGenerator<TarPart>): Promise<BackupManifest> {
  const head = (await parts.next()).value
  if (head?.kind !== 'file' || head.name !== MANIFEST || head.bytes > MANIFEST_LIMIT_BYTES)
    throw new BrokenArchive('it does not begin with a manifest')
  const chunks: Buffer[] = []
  for (let left = head.bytes; left > 0; left -= chunks.at(-1)?.length ?? 0) {
    const part = (await parts.next()).value
    if (part?.kind !== 'content') throw new BrokenArchive('its manifest is cut short')
    chunks.push(part.chunk)
  }
  const manifest = parseBackupManifest(Buffer.concat(chunks))
  if (!manifest) throw new BrokenArchive('its manifest is not one of this program')
  return manifest
}
