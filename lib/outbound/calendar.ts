import { createHash } from 'node:crypto'
import ical, { ICalAlarmType, ICalCalendarMethod, ICalEventTransparency } from 'ical-generator'
import { type Day, dayNumber } from '@/lib/core/day'
import type { HouseholdPlan } from '@/lib/core/plan-types'
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

const SIX_HOURS_SECONDS = 6 * 60 * 60
/** Nine in the morning of the day itself: an all-day event begins at midnight. */
const ALARM_AFTER_START_SECONDS = 9 * 60 * 60

/**
 * The events of some homes, one an item; a closed home has none. A changed filter's item keeps its UID and moves. Only a
 * write (which raises the revision) or a new day changes anything, so the two together are a SEQUENCE that never falls.
 */
export function feedEvents(homes: readonly PlannedHome[], origin: string): FeedEvent[] {
  const many = homes.length > 1
  return homes.flatMap(({ stored, plan, on }) => {
    if (stored.state === 'closed') return []
    const sequence = stored.revision * 2 + Math.max(0, dayNumber(on) - dayNumber('2026-01-01'))
    return plan.items.map((item) => ({
      uid: uidOf(stored.id, item.task, item.subject),
      day: shownOn(stored, item),
      title: many ? `${itemTitle(stored, item)} (${stored.household.name})` : itemTitle(stored, item),
      text: itemSentences(stored, item).join('\n'),
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

/** The feed as RFC 5545 text: whole-day events, one alarm each, which don't make anybody busy. */
export function calendarText(events: readonly FeedEvent[], { name }: { name: string }): string {
  const calendar = ical({
    name,
    prodId: { company: 'Plenum', product: 'Calendar', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
    ttl: SIX_HOURS_SECONDS,
  })
  const around = calendar.toString()
  let within = ''
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
    within += event.toString()
  }
  return `${around.slice(0, -END.length)}${foldLines(within)}${END}`
}

function atMidnightUtc(day: Day): Date {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number)
  return new Date(Date.UTC(year, month - 1, date))
}
