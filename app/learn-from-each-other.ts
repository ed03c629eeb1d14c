import { Cron } from 'croner'
import { tables } from '@/content/tables'
import { today } from '@/lib/clock'
import { pooledHomes } from '@/lib/core/pooled-homes'
import { listPoolsDue, poolDust } from '@/lib/data/pooled-dust'
import { DatabaseUnavailable } from '@/lib/data/unavailable'

/** Lets the homes of one account learn from each other, if they have not today. Gives how many homes changed. */
export function learnToday(accountId: string): Promise<number> {
  return poolDust(accountId, today('UTC'), (homes) => pooledHomes(homes, tables, (home) => today(home.timeZone)))
}

/** Lets the homes of everybody who asked for it learn, if they have not today. One account that cannot keeps no other from it. */
export async function learnDue(): Promise<void> {
  for (const accountId of await listPoolsDue(today('UTC'))) {
    await learnToday(accountId).catch((error) => {
      if (error instanceof DatabaseUnavailable) throw error
      console.error(`Homes of account ${accountId} did not learn:`, error)
    })
  }
}

const kept = globalThis as typeof globalThis & { plenumLearning?: Cron }

/** Does it for everybody who asked for it, once a day; looked for every hour, so that a server which slept catches up. */
export function keepLearning(): void {
  kept.plenumLearning ??= new Cron(
    '23 * * * *',
    {
      timezone: 'UTC',
      protect: true,
      catch: (error) => console.error(`Homes did not learn: ${error instanceof Error ? error.message : error}`),
    },
    learnDue,
  )
}
