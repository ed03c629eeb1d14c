/** What a person can hear, see or feel with every cover on. */
export const STARTUP_EVENTS = [
  'calls',
  'hum',
  'light',
  'warm-air',
  'cool-air',
  'silence',
  'starts-over',
  'bang',
] as const
export type StartupEvent = (typeof STARTUP_EVENTS)[number]

export interface TimedEvent {
  event: StartupEvent
  /** Seconds since the thermostat called, tapped or typed. */
  second: number
}

/** One line of the normal order, with a wide range: no single figure holds for all makers. */
export interface StartupRow {
  event: 'calls' | 'hum' | 'light' | 'warm-air'
  name: string
  /** Seconds after the row before. */
  fromSeconds: number
  toSeconds: number
  note: string
  sources: string[]
}

/** A family of causes, never a part. */
export interface StartupFamily {
  id: string
  say: string
  overlaps: string
  sources: string[]
}

export interface StartupTable {
  rows: StartupRow[]
  families: StartupFamily[]
  /** Said first of all that fits. */
  bursts: string
  stop: string
}

export type Watched =
  | { kind: 'stop'; say: string; at: number }
  | { kind: 'broken'; because: string }
  | {
      kind: 'watched'
      /** Said before anything else. */
      first: string
      rows: { row: StartupRow; after: number | null; fits: 'within' | 'early' | 'late' | 'not-seen' }[]
      /** Two or more where what was seen fits several; empty when all was normal or too little was seen. */
      families: StartupFamily[]
      normal: boolean
    }

/** Seconds within which warm air is no warmth of a flame that held: the fan starts later than that. */
const DIES_WITHIN = 15
const BURST_FROM = 45

/**
 * What the timed events fit. A lean, never a diagnosis. A bang stops it: nothing else is then worth watching.
 * Times must not run backwards; at most 60 events.
 */
export function watchStartup(events: readonly TimedEvent[], table: StartupTable): Watched {
  if (events.length > 60)
    return { kind: 'broken', because: 'That is more than one start-up. Begin again with the next one.' }
  for (const [i, { second }] of events.entries()) {
    if (!Number.isFinite(second) || second < 0 || second > 7200)
      return { kind: 'broken', because: 'A time must be between 0 and 7200 seconds.' }
    if (i > 0 && second < (events[i - 1] as TimedEvent).second)
      return { kind: 'broken', because: 'The times must follow each other.' }
  }
  const bang = events.find(({ event }) => event === 'bang')
  if (bang !== undefined) return { kind: 'stop', say: table.stop, at: bang.second }
  const rows = rowsSeen(events, table.rows)
  const ids = familiesOf(events)
  const families = ids.map((id) => {
    const family = table.families.find((each) => each.id === id)
    if (family === undefined) throw new Error(`no start-up family ${id}`)
    return family
  })
  const normal = ids.length === 0 && rows.every(({ fits }) => fits !== 'not-seen')
  return { kind: 'watched', first: table.bursts, rows, families, normal }
}

function rowsSeen(events: readonly TimedEvent[], rows: readonly StartupRow[]) {
  let before = 0
  return rows.map((row) => {
    const seen = events.find(({ event, second }) => event === row.event && second >= before)
    if (seen === undefined) return { row, after: null, fits: 'not-seen' as const }
    const after = seen.second - before
    before = seen.second
    const fits = after < row.fromSeconds ? 'early' : after > row.toSeconds ? 'late' : 'within'
    return { row, after, fits: fits as 'within' | 'early' | 'late' }
  })
}

function familiesOf(events: readonly TimedEvent[]): string[] {
  const has = (event: StartupEvent) => events.some((each) => each.event === event)
  const ended = has('silence') || has('starts-over')
  if (!has('calls') && !has('hum') && !has('light')) return has('silence') ? ['power', 'thermostat'] : []
  if (!has('hum') && !has('light') && !has('warm-air')) return has('silence') ? ['control', 'safety-wait'] : []
  if (!has('light') && !has('warm-air')) return ended ? ['venting', 'ignition'] : []
  const spells = flameSpells(events)
  const dies = spells.some((spell) => !spell.warm && spell.seconds <= DIES_WITHIN)
  const warm = spells.filter((spell) => spell.warm)
  // One warm spell that ends in silence may be a room that got warm enough.
  const bursts =
    warm.length > 1 || warm.some((spell) => spell.cooled || (spell.seconds >= BURST_FROM && has('starts-over')))
  const onlyDone = spells.length === 1 && (warm[0]?.seconds ?? 0) >= BURST_FROM
  if (bursts && dies) return ['limit', 'flame-proving', 'venting']
  if (bursts) return ['limit', 'air-path']
  if (dies) return ['flame-proving', 'fuel']
  // Between seconds and minutes both fit, and so does pressure.
  if (spells.length > 0 && !onlyDone) return ['flame-proving', 'limit', 'venting']
  if (has('light') && !has('warm-air') && has('cool-air')) return ['blower', 'flame-proving']
  return []
}

/** Each time that it lit or warmed and then ended: how long, whether warm air was felt, and whether it turned cool. */
function flameSpells(events: readonly TimedEvent[]): { seconds: number; warm: boolean; cooled: boolean }[] {
  const spells: { seconds: number; warm: boolean; cooled: boolean }[] = []
  let from: number | null = null
  let warm = false
  for (const { event, second } of events) {
    if (event === 'light' || event === 'warm-air') {
      if (from === null) from = second
      if (event === 'warm-air') warm = true
    } else if (from !== null && (event === 'silence' || event === 'starts-over' || (event === 'cool-air' && warm))) {
      spells.push({ seconds: second - from, warm, cooled: event === 'cool-air' })
      from = null
      warm = false
    }
  }
  return spells
}
