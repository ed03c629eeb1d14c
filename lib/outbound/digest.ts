import { type Day, daysBetween } from '@/lib/core/day'
import { dayInWords, plural } from '@/lib/core/day-words'
import type { Item } from '@/lib/core/plan-types'
import { homeInWords } from '@/lib/core/subject-words'
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

// Of hundreds of homes a mail would be cut off by the programs that show it, and nobody would read it.
const IN_FULL = 30

/** The mail about everything that is due soon, due or overdue; overdue first, then by day, then as told. */
export function digestMail(
  { accountId }: { accountId: string },
  told: readonly Told[],
  { kind, origin, advice = [] }: { kind: 'digest' | 'overdue'; origin: string; advice?: readonly Advice[] },
): DigestMail {
  const sorted = [...told].sort((a, b) => rank(a) - rank(b) || daysBetween(b.item.due, a.item.due))
  const subject = subjectOf(sorted, kind, advice)
  const homes = new Set(told.map(({ stored }) => stored.id)).size
  const blocks: Block[] = [{ kind: 'heading', say: subject }]
  for (const { stored, title, say } of advice) {
    blocks.push({ kind: 'title', say: `${title} (${homeInWords(stored.household)})` })
    blocks.push(...say.map((text) => ({ kind: 'text', say: text }) as const))
  }
  for (const one of sorted.slice(0, IN_FULL)) blocks.push(...itemBlocks(accountId, one, homes > 1))
  blocks.push(...restBlocks(sorted.slice(IN_FULL), origin))
  blocks.push({
    kind: 'small',
    say: 'If you smell gas or a carbon monoxide alarm sounds, get everyone out first and call from outside.',
  })
  blocks.push({ kind: 'small', say: `Everything, and why each day: ${origin}/` })
  blocks.push({ kind: 'small', say: `How often and when you get this: ${origin}/account/reminders` })
  return { subject, text: mailText(blocks), html: mailHtml(subject, blocks) }
}

/** What has no room in full: how much, in how many homes, and where all of it stands. */
function restBlocks(rest: readonly Told[], origin: string): Block[] {
  if (rest.length === 0) return []
  const homes = new Set(rest.map(({ stored }) => stored.id)).size
  const overdue = rest.filter(({ item }) => item.state === 'overdue').length
  return [
    { kind: 'title', say: `${plural(rest.length, 'more thing')} in ${plural(homes, 'home')}` },
    ...(overdue > 0 ? [{ kind: 'text' as const, say: `${overdue} of them overdue.` }] : []),
    { kind: 'text', say: `Which homes need a visit, and on which days: ${origin}/rounds` },
  ]
}

function rank({ item }: Told): number {
  return item.state === 'overdue' ? 0 : item.state === 'due' ? 1 : 2
}

function subjectOf(told: readonly Told[], kind: 'digest' | 'overdue', advice: readonly Advice[]): string {
  const first = told[0]
  if (!first) return advice[0] ? `${advice[0].title}: ${homeInWords(advice[0].stored.household)}` : 'Plenum'
  const title = itemTitle(first.stored, first.item)
  const more = told.length > 1 ? `, and ${plural(told.length - 1, 'more thing')}` : ''
  if (kind === 'overdue') return `Overdue: ${title}${more}`
  const when = first.item.state === 'overdue' ? 'overdue' : `due ${dayInWords(first.item.due, first.on)}`
  return `${title}, ${when}${more}`
}

function itemBlocks(accountId: string, { stored, item, on }: Told, isNamed: boolean): Block[] {
  const where = isNamed ? ` (${homeInWords(stored.household)})` : ''
  const filter = stored.household.filters.find(({ id }) => id === item.subject)
  const buttons: Button[] = filter && filter.medium !== 'screen' ? ['done', 'clear', 'later'] : ['done', 'later']
  const { task, subject } = item
  return [
    { kind: 'title', say: `${itemTitle(stored, item)}${where}` },
    { kind: 'text', say: `${stateInWords(item.state)}: ${dayInWords(item.due, on)}.` },
    { kind: 'text', say: itemSentences(stored, item, on).join(' ') },
    {
      kind: 'buttons',
      links: buttons.map((button) => ({
        say: BUTTON_WORDS[button],
        href: actAddress({ accountId, householdId: stored.id, task, subject, button, issued: on }),
      })),
    },
  ]
}
