import { type ParsedWalk, parseWalk } from '@/lib/guide/address'

/** An answer that is written down, as a form of the guide sends it; not yet checked against the flow. */
export interface GuideAnswer {
  homeId: string | null
  systemId: string | null
  walk: ParsedWalk
  node: string
  answer: string
  /** Which of several filters a check was about, or `all`. */
  filter: string | null
  /** When a phone gave it without network, in minutes since 1970-01-01T00:00Z; null: now. */
  queuedAt: number | null
}

const MONTH_MINUTES = 31 * 24 * 60

/** Anything that is no such form gives a broken walk; a time from the future or long ago counts as now. */
export function parseGuideAnswer(form: FormData, now: number): GuideAnswer {
  const text = (name: string) => {
    const value = form.get(name)
    return typeof value === 'string' && value !== '' ? value : null
  }
  const queued = text('queued')
  const minute = queued !== null && /^\d{1,9}$/.test(queued) ? Number(queued) : null
  return {
    homeId: text('home'),
    systemId: text('system'),
    walk: parseWalk(text('walk') ?? ''),
    node: text('node') ?? '',
    answer: text('answer') ?? '',
    filter: text('filter'),
    queuedAt: minute === null ? null : minute <= now && minute > now - MONTH_MINUTES ? minute : now,
  }
}
