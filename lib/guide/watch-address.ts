import { STARTUP_EVENTS, type TimedEvent } from './startup-watcher'

/** `calls.0_hum.12_light.45`: what was heard and felt, each with its second since the thermostat called. */
export function encodeWatch(events: readonly TimedEvent[]): string {
  return events.map(({ event, second }) => `${event}.${second}`).join('_')
}

/** Reads it back; null for anything that nobody could have tapped or typed. */
export function parseWatch(text: string): TimedEvent[] | null {
  if (text === '') return []
  const parts = text.split('_')
  if (parts.length > 60) return null
  const events: TimedEvent[] = []
  for (const part of parts) {
    const [, said, second] = /^([a-z-]+)\.(\d{1,4})$/.exec(part) ?? []
    const event = STARTUP_EVENTS.find((each) => each === said)
    if (event === undefined) return null
    events.push({ event, second: Number(second) })
  }
  return events
}
