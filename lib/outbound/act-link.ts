import { createHmac, timingSafeEqual } from 'node:crypto'
import { publicUrl } from '@/lib/access/public-url'
import { installationSecret } from '@/lib/access/secret'
import { addDays, type Day } from '@/lib/core/day'
import { TASKS, type Task } from '@/lib/core/household'

/** What a button of a mail does: it is done · looked at, light comes through · remind me in two weeks. */
export const BUTTONS = ['done', 'clear', 'later'] as const
export type Button = (typeof BUTTONS)[number]

/** What one button of one mail stands for. It opens nothing else. */
export interface ActLink {
  accountId: string
  householdId: string
  task: Task
  subject: string
  button: Button
  /** The day of the mail; a month later the link is over. */
  issued: Day
}

export const LINK_DAYS = 30

/** The address of a button. */
export function actAddress(link: ActLink): string {
  return `${publicUrl()}/act/${signLink(link)}`
}

/** A link as text that only this installation can make. */
export function signLink({ accountId, householdId, task, subject, button, issued }: ActLink): string {
  const body = Buffer.from(JSON.stringify([accountId, householdId, task, subject, button, issued])).toString(
    'base64url',
  )
  return `${body}.${signatureOf(body)}`
}

/** What a link stands for, or null where it was not made here or is over on a day. */
export function readLink(token: string, on: Day): ActLink | null {
  const [body = '', signature = '', ...more] = token.split('.')
  if (more.length > 0 || !isSame(signature, signatureOf(body))) return null
  const [accountId, householdId, task, subject, button, issued] = JSON.parse(
    Buffer.from(body, 'base64url').toString('utf8'),
  ) as [string, string, Task, string, Button, Day]
  // A task that a later version no longer knows.
  if (!TASKS.includes(task) || !BUTTONS.includes(button)) return null
  return addDays(issued, LINK_DAYS) < on ? null : { accountId, householdId, task, subject, button, issued }
}

function signatureOf(body: string): string {
  return createHmac('sha256', `act-link ${installationSecret()}`).update(body).digest('base64url')
}

function isSame(a: string, b: string): boolean {
  const [one, other] = [Buffer.from(a), Buffer.from(b)]
  return one.length === other.length && timingSafeEqual(one, other)
}
