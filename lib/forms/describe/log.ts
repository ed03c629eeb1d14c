import { DUST_EVENT_KINDS, type DustEvent } from '@/lib/core/household'
import { typedDay } from '../quantities'
import { Answers, type Read, type Typed } from './answers'

export const MOST_EVENTS = 30

/** Dusty times, a row each: `event-0`, `event-0-from`, `event-0-to`. A row without a kind is none. */
export function readEvents(typed: Typed): Read<DustEvent[]> {
  const answers = new Answers(typed)
  const events: DustEvent[] = []
  for (let row = 0; row < MOST_EVENTS; row++) {
    const word = answers.text(`event-${row}`)
    if (word === '' || word === 'none') continue
    const kind = answers.choice(`event-${row}`, DUST_EVENT_KINDS, 'Choose what makes the dust, or “none”.')
    const from = answers.take(`event-${row}-from`, typedDay)
    const to = answers.take(`event-${row}-to`, typedDay)
    if (from && to && to < from) answers.fault(`event-${row}-to`, `It cannot end before it begins (${from}).`)
    else if (kind && from && to) events.push({ kind, from, to })
  }
  return answers.result(() => events)
}

export function eventsTyped(events: readonly DustEvent[]): Typed {
  return Object.fromEntries(
    events.flatMap(({ kind, from, to }, row) => [
      [`event-${row}`, [kind]],
      [`event-${row}-from`, [from]],
      [`event-${row}-to`, [to]],
    ]),
  )
}
