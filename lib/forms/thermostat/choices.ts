import { type DateOrder, RUNS, type Run } from '@/lib/core/run-rows'
import { ROLES, type Role } from './columns'

/** How an export is to be read, as far as a person said so; what is absent is guessed. */
export interface ExportChoices {
  /** The system that was measured; empty before anybody said which. */
  system: string
  roles: Role[] | null
  /** What a word means: bits as `wordMeans` gives them, null for unknown. */
  words: Map<string, number | null>
  order: DateOrder | undefined
  /** The zone of stamps without an offset of their own. */
  zone: 'home' | 'utc'
  together: Partial<Record<Run, 'longest' | 'added'>>
  fan: 'auto' | 'all' | 'alone'
}

/** What a word may be said to mean, as a form sends it. */
export const MEANINGS: readonly [string, number | null][] = [
  ['off', 0],
  ['heat', 1],
  ['cool', 2],
  ['fan', 4],
  ['heat-cool', 3],
  ['unknown', null],
]

const MOST_COLUMNS = 60
const MOST_WORDS = 60

/** Reads the choices from a form or an address; what is none of ours is passed over. Never throws. */
export function parseChoices(sent: { get(name: string): unknown; getAll?(name: string): unknown[] }): ExportChoices {
  const text = (name: string) => {
    const value = sent.get(name)
    return typeof value === 'string' ? value : ''
  }
  const columns = Number(text('columns'))
  const roles =
    Number.isInteger(columns) && columns > 0 && columns <= MOST_COLUMNS
      ? Array.from({ length: columns }, (_, i): Role => ROLES.find((role) => role === text(`c${i}`)) ?? '')
      : null
  const words = new Map<string, number | null>()
  for (let i = 0; i < MOST_WORDS; i++) {
    const word = text(`w${i}`)
    const meaning = MEANINGS.find(([name]) => name === text(`m${i}`))
    if (word !== '' && meaning) words.set(word, meaning[1])
  }
  const order = text('order')
  const fan = text('fan')
  return {
    system: text('system'),
    roles,
    words,
    order: order === 'month-first' || order === 'day-first' ? order : undefined,
    zone: text('zone') === 'utc' ? 'utc' : 'home',
    together: Object.fromEntries(
      RUNS.flatMap((run) => {
        const way = text(`together-${run}`)
        return way === 'longest' || way === 'added' ? [[run, way]] : []
      }),
    ),
    fan: fan === 'all' || fan === 'alone' ? fan : 'auto',
  }
}
