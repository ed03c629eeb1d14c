import type { Day } from '@/lib/core/day'
import { lookInWords, whoInWords } from '@/lib/core/due-words'
import { arrowInWords, mediumInWords, placeInWords, sizeInWords } from '@/lib/core/filter-words'
import type { Item } from '@/lib/core/plan-types'
import { subjectInWords } from '@/lib/core/subject-words'
import { taskInWords } from '@/lib/core/words'
import type { StoredHousehold } from '@/lib/data/households'

/** `Change the filter: wall grille`. */
export function itemTitle({ household }: StoredHousehold, { task, subject }: Item): string {
  return `${taskInWords(task)}: ${subjectInWords(household, subject)}`
}

/** What a reminder says of an item on a day, a sentence each: size and place, window, why, what to look for. */
export function itemSentences(stored: StoredHousehold, item: Item, on: Day): string[] {
  const said = []
  const filter = stored.household.filters.find(({ id }) => id === item.subject)
  if (filter) {
    const arrow = arrowInWords(filter.place)
    const what = `${sizeInWords(filter.nominal)}, ${mediumInWords(filter.medium, filter.merv)}`
    said.push(`${what}, ${placeInWords(filter.place)}${arrow ? `; ${arrow}` : ''}.`)
    const note = stored.placeNotes[filter.id]
    if (note) said.push(`Where: ${note}`)
  }
  said.push(whoInWords(item, on))
  said.push(...item.reasons.map(({ say }) => say))
  if (item.lookOn && item.lookOn < item.due && filter?.medium !== 'screen') said.push(lookInWords(item.lookOn, on))
  return said
}

/** The day on which an item is shown: its due day, or the day until which it is put off if that is later. */
export function shownOn({ putOffs }: StoredHousehold, { task, subject, due }: Item): Day {
  const off = putOffs.find((found) => found.task === task && found.subject === subject)
  return off && off.until > due ? off.until : due
}

/** Whether somebody has put the item off until a later day than `on`. */
export function isPutOff({ putOffs }: StoredHousehold, { task, subject }: Item, on: Day): boolean {
  return putOffs.some((off) => off.task === task && off.subject === subject && off.until > on)
}

/** The page that records an item done. */
export function recordAddress(origin: string, householdId: string, { task, subject }: Item): string {
  return `${origin}/home/${householdId}/record/${task}/${encodeURIComponent(subject)}`
}
