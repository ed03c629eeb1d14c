import { MigrationRefused } from '@/lib/data/migrations'
import { MoveRefused } from '@/lib/data/move'
import { WrongAddress } from '@/lib/data/place'
import { Refused } from './refused'

/** Lets a command's database speak plainly: what it refuses becomes a line for whoever typed the command. */
export async function plainly<T>(deed: () => Promise<T>): Promise<T> {
  try {
    return await deed()
  } catch (error) {
    if (error instanceof MoveRefused) throw new Refused(error.message)
    if (error instanceof MigrationRefused || error instanceof WrongAddress) throw new Refused(error.message)
    throw error
  }
}
