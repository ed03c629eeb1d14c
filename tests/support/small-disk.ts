import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, statfsSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** A disk of a few megabytes that can be filled to its last byte and emptied again. */
export interface SmallDisk {
  folder: string
  fill(): void
  makeRoom(): void
  remove(): void
}

/** Mounts one in memory, or gives null where this account may not mount anything. */
export function mountSmallDisk(megabytes: number): SmallDisk | null {
  const folder = mkdtempSync(join(tmpdir(), 'plenum-small-'))
  const { status } = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${megabytes}m`, 'plenum-small', folder])
  if (status !== 0) {
    rmSync(folder, { recursive: true })
    return null
  }
  const ballast = join(folder, 'ballast')
  return {
    folder,
    fill() {
      const { bsize, bavail } = statfsSync(folder)
      // Its own block may be needed for the name; what is refused is then less than one page of a database.
      for (let blocks = bavail; blocks > 0; blocks--) {
        try {
          writeFileSync(ballast, Buffer.alloc(blocks * bsize))
          return
        } catch (error) {
          if ((error as NodeJS.ErrnoException).code !== 'ENOSPC') throw error
          truncateSync(ballast, 0)
        }
      }
    },
    makeRoom: () => rmSync(ballast, { force: true }),
    remove() {
      spawnSync('umount', ['-l', folder])
      rmSync(folder, { recursive: true, force: true })
    },
  }
}
