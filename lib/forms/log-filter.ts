import { z } from 'zod'
import type { Day } from '@/lib/core/day'
import { LOG_KINDS, type LogKind } from '@/lib/core/log-words'
import { DOORS, type Door } from '@/lib/core/viewer'
import { typedDay } from './quantities'

/** What of the log is asked for, as the address says it; what is left out is not asked for. */
export interface LogQuery {
  kind?: LogKind
  subject?: string
  /** A name as the log shows it. */
  who?: string
  door?: Door
  from?: Day
  to?: Day
}

type Sent = Record<string, string | string[] | undefined> | URLSearchParams

const FIELDS = {
  kind: z.enum(LOG_KINDS),
  subject: z.string().min(1).max(64),
  who: z.string().min(1).max(200),
  door: z.enum(DOORS),
  from: typedDay,
  to: typedDay,
}

/** The part of an address after `?`. A part that is not understood is left out and said, so that no filter is believed in that is not there. */
export function parseLogQuery(sent: Sent): { query: LogQuery; faults: { path: string; say: string }[] } {
  const query: Record<string, string> = {}
  const faults: { path: string; say: string }[] = []
  for (const [name, schema] of Object.entries(FIELDS)) {
    const value = sent instanceof URLSearchParams ? sent.get(name) : [sent[name]].flat()[0]
    if (value === null || value === undefined || value.trim() === '') continue
    const parsed = schema.safeParse(value)
    if (parsed.success) query[name] = parsed.data
    else faults.push({ path: name, say: SAY[name as keyof typeof SAY] ?? 'This is not known here, and was left out.' })
  }
  return { query: query as LogQuery, faults }
}

const SAY = {
  from: 'The first day is no day that exists, and was left out.',
  to: 'The last day is no day that exists, and was left out.',
}

/** A query as the part of an address after `?`, empty where nothing is asked. */
export function logQueryText(query: LogQuery): string {
  const text = new URLSearchParams(Object.entries(query).filter(([, value]) => value !== undefined)).toString()
  return text === '' ? '' : `?${text}`
}
