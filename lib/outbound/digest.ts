import type { Day } from '@/lib/core/day'
import { dayInWords, plural } from '@/lib/core/day-words'
import type { Item } from '@/lib/core/plan-types'
import { stateInWords } from '@/lib/core/words'
import type { StoredHousehold } from '@/lib/data/households'
import { actAddress, type Button } from './act-link'
import { itemSentences, itemTitle } from './item-words'
import { type Block, mailHtml, mailText } from './mail-html'

/** One item to be told of, in its home, on that home's day. */
export interface Told {
  stored: StoredHousehold
  item: Item
  on: Day
}

/** An advice about a home that is not an item of its plan. */
export interface Advice {
  stored: StoredHousehold
  title: string
  say: string[]
}

export interface DigestMail {
  subject: string
  text: string
  html: string
}

const BUTTON_WORDS: Record<Button, string> = {
  done: 'Done today',
  clear: 'Looked: light comes through',
  later: 'Remind me in two weeks',
}

/** The mail about everything that is due soon, due or overdue; overdue first, then by day. */
export function digestMail(
  { accountId }: { accountId: string },
  told: readonly Told[],
  { kind, origin, advice = [] }: { kind: 'digest' | 'overdue'; origin: string; advice?: readonly Advice[] },
): DigestMail {
  const sorted = [...told].sort((a, b) => rank(a) - rank(b) || (a.item.due < b.item.due ? -1 : 1))
  const subject = subjectOf(sorted, kind, advice)
  const homes = new Set(told.map(({ stored }) => stored.id)).size
  const blocks: Block[] = [{ kind: 'heading', say: subject }]
  for (const { stored, title, say } of advice) {
    blocks.push({ kind: 'title', say: `${title} (${stored.household.name})` })
    blocks.push(...say.map((text) => ({ kind: 'text', say: text }) as const))
  }
  for (const one of sorted) blocks.push(...itemBlocks(accountId, one, homes > 1))
  blocks.push({
    kind: 'small',
    say: 'If you smell gas or a carbon monoxide alarm sounds, get everyone out first and call from outside.',
  })
  blocks.push({ kind: 'small', say: `Everything, and why each day: ${origin}/` })
  blocks.push({ kind: 'small', say: `How often and when you get this: ${origin}/account/reminders` })
  return { subject, text: mailText(blocks), html: mailHtml(subject, blocks) }
}

function rank({ item }: Told): number {
  return item.state === 'overdue' ? 0 : item.state === 'due' ? 1 : 2
}

function subjectOf(told: readonly Told[], kind: 'digest' | 'overdue', advice: readonly Advice[]): string {
  const first = told[0]
  if (!first) return advice[0] ? `${advice[0].title}: ${advice[0].stored.household.name}` : 'Plenum'
  const title = itemTitle(first.stored, first.item)
  const more = told.length > 1 ? `, and ${plural(told.length - 1, 'more thing')}` : ''
  if (kind === 'overdue') return `Overdue: ${title}${more}`
  const when = first.item.state === 'overdue' ? 'overdue' : `due ${dayInWords(first.item.due, first.on)}`
  return `${title}, ${when}${more}`
}

function itemBlocks(accountId: string, { stored, item, on }: Told, isNamed: boolean): Block[] {
  const where = isNamed ? ` (${stored.household.name})` : ''
  const filter = stored.household.filters.find(({ id }) => id === item.subject)
  const buttons: Button[] = filter && filter.medium !== 'screen' ? ['done', 'clear', 'later'] : ['done', 'later']
  const { task, subject } = item
  return [
    { kind: 'title', say: `${itemTitle(stored, item)}${where}` },
    { kind: 'text', say: `${stateInWords(item.state)}: ${dayInWords(item.due, on)}.` },
    { kind: 'text', say: itemSentences(stored, item).join(' ') },
    {
      kind: 'buttons',
      links: buttons.map((button) => ({
        say: BUTTON_WORDS[button],
        href: actAddress({ accountId, householdId: stored.id, task, subject, button, issued: on }),
      })),
    },
  ]
}
