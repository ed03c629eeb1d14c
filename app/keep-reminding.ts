import { Cron } from 'croner'
import { COLD_ADVICE } from '@/content/away'
import { runReminders } from '@/lib/outbound/runner'
import { plans } from './plans'

// Over the module reloads of a development server too there is one.
const kept = globalThis as typeof globalThis & { plenumReminding?: Cron }

/** Reminds people from inside the server, every minute; a pass that takes longer is not overtaken by the next. */
export function keepReminding(): void {
  kept.plenumReminding ??= new Cron(
    '* * * * *',
    {
      timezone: 'UTC',
      protect: true,
      catch: (error) => console.error(`Reminders did not go out: ${error instanceof Error ? error.message : error}`),
    },
    async () => {
      await runReminders({ plans, freezeWatch: COLD_ADVICE.map(({ say }) => say) })
    },
  )
}
