import { now } from '@/lib/clock'
import { instant } from '@/lib/data/instant'
import { mailer, mailSettings } from './mailer'
import { type Passed, passOutbox } from './outbox'
import { canPush } from './push-keys'
import { push } from './pusher'
import { type Means, settleDue } from './settle-due'

export type Ran = Passed & { people: number; messages: number }

/** Reminds everybody whose moment has come and sends what waits. Safe beside other processes that do the same. */
export async function runReminders(means: Pick<Means, 'plans' | 'freezeWatch'>): Promise<Ran> {
  const settings = mailSettings()
  const at = () => instant(now())
  const settled = await settleDue({ ...means, at: at(), canMail: settings.ok, canPush: canPush() })
  const post = settings.ok ? mailer(settings) : null
  try {
    const passed = await passOutbox(
      { mail: post && ((message) => post.send(message)), push: canPush() ? (message) => push(message) : null },
      at,
    )
    return { ...settled, ...passed }
  } finally {
    post?.close()
  }
}
