import { createHash } from 'node:crypto'
import ical, { ICalAlarmType, ICalCalendarMethod, ICalEventTransparency } from 'ical-generator'
import { type Day, dayNumber } from '@/lib/core/day'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import { homeInWords } from '@/lib/core/subject-words'
import type { StoredHousehold } from '@/lib/data/households'
import { foldLines } from './fold'
import { itemSentences, itemTitle, recordAddress, shownOn } from './item-words'

/** A home with its plan on its own day. */
export interface PlannedHome {
  stored: StoredHousehold
  plan: HouseholdPlan
  on: Day
}

/** One event: what a calendar shows of an item. `sequence` never falls. */
export interface FeedEvent {
  uid: string
  day: Day
  title: string
  text: string
  address: string
  sequence: number
  on: Day
}

interface FeedOptions {
  /** Where this program is reached, without a slash at the end. */
  origin: string
  /** More homes than one are in the calendar. */
  many: boolean
}

const SIX_HOURS_SECONDS = 6 * 60 * 60
/** Nine in the morning of the day itself: an all-day event begins at midnight. */
const ALARM_AFTER_START_SECONDS = 9 * 60 * 60

/**
 * The events of some homes, one an item; a closed home has none. A changed filter's item keeps its UID and moves. Only a
 * write (which raises the revision) or a new day changes anything, so the two together are a SEQUENCE that never falls.
 * Where the calendar is one of many homes, each title says which.
 */
export function feedEvents(homes: readonly PlannedHome[], { origin, many }: FeedOptions): FeedEvent[] {
  return homes.flatMap(({ stored, plan, on }) => {
    if (stored.state === 'closed') return []
    const sequence = stored.revision * 2 + Math.max(0, dayNumber(on) - dayNumber('2026-01-01'))
    return plan.items.map((item) => ({
      uid: uidOf(stored.id, item.task, item.subject),
      day: shownOn(stored, item),
      title: many ? `${itemTitle(stored, item)} (${homeInWords(stored.household)})` : itemTitle(stored, item),
      text: itemSentences(stored, item, on).join('\n'),
      address: recordAddress(origin, stored.id, item),
      sequence,
      on,
    }))
  })
}

// The subject is any text, so it is hashed; the household's id is ours and says nothing of the home.
function uidOf(householdId: string, task: string, subject: string): string {
  const hash = createHash('sha256').update(`${task}\n${subject}`).digest('hex').slice(0, 20)
  return `${householdId}-${hash}@plenum`
}

/** What an answer's ETag is made of: everything that is seen, so that the passing of a day alone changes nothing. */
export function feedTag(events: readonly FeedEvent[], name: string): string {
  const seen = events.map(({ uid, day, title, text, address }) => [uid, day, title, text, address])
  return `"${createHash('sha256')
    .update(JSON.stringify([name, seen]))
    .digest('base64url')
    .slice(0, 32)}"`
}

const END = 'END:VCALENDAR'

/** A feed as RFC 5545 text, from the lines of its events. */
export function calendarText(eventLines: string, { name }: { name: string }): string {
  const around = ical({
    name,
    prodId: { company: 'Plenum', product: 'Calendar', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
    ttl: SIX_HOURS_SECONDS,
  }).toString()
  return `${around.slice(0, -END.length)}${eventLines}${END}`
}

/** The lines of some events, folded: whole days, one alarm each, which don't make anybody busy. */
export function linesOfEvents(events: readonly FeedEvent[]): string {
  const calendar = ical()
  let lines = ''
  for (const { uid, day, title, text, address, sequence, on } of events) {
    const event = calendar.createEvent({
      id: uid,
      // Local midnight would shift the day by the zone of whoever runs this.
      start: atMidnightUtc(day),
      allDay: true,
      // When this was last worked out: the same text for the whole day.
      stamp: atMidnightUtc(on),
      sequence,
      summary: title,
      description: `${text}\n\nRecord it done: ${address}`,
      url: address,
      transparency: ICalEventTransparency.TRANSPARENT,
    })
    event.createAlarm({ type: ICalAlarmType.display, triggerAfter: ALARM_AFTER_START_SECONDS, description: title })
    lines += event.toString()
  }
  return foldLines(lines)
}

function atMidnightUtc(day: Day): Date {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number)
  return new Date(Date.UTC(year, month - 1, date))
}
