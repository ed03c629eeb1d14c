'use server'

import { refresh } from 'next/cache'
import type { Done } from '@/app/parts/action-form'
import { refused } from '@/app/refusal'
import { action } from '@/lib/access/action'
import { publicUrl } from '@/lib/access/public-url'
import { today } from '@/lib/clock'
import { endFeed } from '@/lib/data/feeds'
import { findAddress } from '@/lib/data/mail-links'
import { endPush, type PushTarget, savePushTarget } from '@/lib/data/push-targets'
import { findReminding, saveReminding } from '@/lib/data/remindings'
import { parseNothing } from '@/lib/forms/account-forms'
import {
  parseFeed,
  parseNewFeed,
  parsePushTarget,
  parseReminderWish,
  type ReminderWish,
} from '@/lib/forms/outbound-forms'
import { sendConfirmation } from '@/lib/outbound/account-mail'
import { changeFeedAddress, createFeed } from '@/lib/outbound/feed'
import { mailSettings } from '@/lib/outbound/mailer'
import { canPush } from '@/lib/outbound/push-keys'
import { nextMoment } from '@/lib/outbound/settle-due'

const ONCE =
  'Paste it into your calendar program as a calendar to subscribe to. It is shown this once; whoever has it can read what is due.'

export const makeFeed = action<{ scope: string }, Done>({
  name: 'make-feed',
  needs: 'account',
  parse: parseNewFeed,
  run: async ({ input, act }) => {
    const made = await createFeed(act, input.scope || null)
    if (!made) return refused('not-found')
    refresh()
    return { ok: true, done: { say: ONCE, link: `${publicUrl()}${made.path}` } }
  },
})

export const renewMyFeed = action<{ feed: string }, Done>({
  name: 'renew-feed',
  needs: 'account',
  parse: parseFeed,
  run: async ({ input, act }) => {
    const made = await changeFeedAddress(act, input.feed)
    if (!made) return refused('not-found')
    refresh()
    return {
      ok: true,
      done: { say: `The earlier address leads nowhere now. ${ONCE}`, link: `${publicUrl()}${made.path}` },
    }
  },
})

export const endMyFeed = action<{ feed: string }, Done>({
  name: 'end-feed',
  needs: 'account',
  parse: parseFeed,
  run: async ({ input, act }) => {
    const ended = await endFeed(act, input.feed)
    if (!ended.ok) return refused(ended.because)
    refresh()
    return { ok: true, done: { say: 'That address leads nowhere now.' } }
  },
})

export const saveWish = action<ReminderWish, Done>({
  name: 'save-reminders',
  needs: 'account',
  parse: parseReminderWish,
  run: async ({ input, act, viewer, headers }) => {
    if (viewer.kind !== 'account') return refused('not-found')
    const before = await findReminding(viewer)
    const push = before?.push ?? false
    await saveReminding(act, { ...input, push, nextAt: nextMoment(input, act.at), today: today(input.timeZone) })
    const address = input.mail && mailSettings().ok ? await findAddress(viewer.accountId) : null
    refresh()
    if (!address || address.emailVerified) return { ok: true, done: { say: 'Saved.' } }
    const sent = await sendConfirmation(headers, act)
    if (!sent.ok) return sent
    return {
      ok: true,
      done: { say: `Saved. A mail is on its way to ${address.email}: follow its link, then reminders come.` },
    }
  },
})

export const showNotices = action<PushTarget, Done>({
  name: 'show-notices',
  needs: 'account',
  parse: parsePushTarget,
  run: async ({ input, act, viewer }) => {
    if (!canPush()) return refused('not-found')
    if ((await findReminding(viewer)) === null)
      return {
        ok: false,
        faults: [{ path: '', say: 'Say first when you want to be reminded, and save it. Then try again.' }],
      }
    await savePushTarget(act, input)
    refresh()
    return { ok: true, done: { say: 'This browser shows a notice when there is something to say.' } }
  },
})

export const endNotices = action<null, Done>({
  name: 'end-notices',
  needs: 'account',
  parse: parseNothing,
  run: async ({ act }) => {
    await endPush(act)
    refresh()
    return { ok: true, done: { say: 'No browser shows notices any more.' } }
  },
})

export const confirmAgain = action<null, Done>({
  name: 'confirm-again',
  needs: 'account',
  parse: parseNothing,
  run: async ({ act, headers }) => {
    const sent = await sendConfirmation(headers, act)
    return sent.ok ? { ok: true, done: { say: 'A new mail is on its way. Earlier links work no more.' } } : sent
  },
})
