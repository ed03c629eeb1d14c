import { DatabaseUnavailable } from '@/lib/data/unavailable'

/** A command cannot do what it was asked; the message is one plain sentence or two, and nothing was done. */
export class Refused extends Error {
  override name = 'Refused'
}

const SAY: Record<string, string> = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'this account may not read or write it',
  EPERM: 'this account may not read or write it',
  EROFS: 'it lies on a disk that can only be read',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk space of this account is used up',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is a file',
}

/**
 * Runs a command: what it gives goes to standard output. A refusal, a database that does not answer and a fault of a
 * file are a line on standard error and exit status 2; any other error is a defect and shows its stack.
 */
export async function endPlainly(command: () => Promise<string>): Promise<void> {
  try {
    console.log(await command())
  } catch (error) {
    const say = plainly(error)
    if (say === null) throw error
    console.error(say)
    process.exitCode = 2
  }
}

function plainly(error: unknown): string | null {
  if (error instanceof Refused || error instanceof DatabaseUnavailable) return error.message
  const { code, path, syscall } = error as NodeJS.ErrnoException
  if (!syscall || !code) return null
  return `${path ? `${path}: ` : ''}${SAY[code] ?? (error as Error).message}. Nothing was done.`
}
