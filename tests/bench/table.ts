import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { cpus } from 'node:os'
import { join } from 'node:path'

/** One line of the bench's table. */
export interface Row {
  what: string
  figure: string
  /** What is asked of the figure, and whether it meets that; without one it is only told. */
  goal?: string
  meets?: boolean
}

/** A figure with a goal: `atMost('page', 1.9, 3)` meets it. */
export function atMost(what: string, figure: number, goal: number, unit = 'times'): Row {
  return { what, figure: `${figure.toFixed(2)} ${unit}`, goal: `at most ${goal} ${unit}`, meets: figure <= goal }
}

export function atLeast(what: string, figure: number, goal: number, unit = 'times'): Row {
  return { what, figure: `${figure.toFixed(1)} ${unit}`, goal: `at least ${goal} ${unit}`, meets: figure >= goal }
}

/** Milliseconds that something takes. */
export async function milliseconds(run: () => unknown): Promise<number> {
  const start = process.hrtime.bigint()
  await run()
  return Number(process.hrtime.bigint() - start) / 1e6
}

/**
 * The medians of several things measured in turn, after a round that warms up: whatever else the machine does falls on
 * all alike.
 */
export async function medians<K extends string>(
  runs: number,
  ways: Record<K, () => unknown>,
): Promise<Record<K, number>> {
  const names = Object.keys(ways) as K[]
  const times = new Map(names.map((name) => [name, [] as number[]]))
  for (let i = 0; i <= runs; i++)
    for (const name of names) {
      const taken = await milliseconds(ways[name])
      if (i > 0) times.get(name)?.push(taken)
    }
  return Object.fromEntries(names.map((name) => [name, middle(times.get(name) ?? [])])) as Record<K, number>
}

export function middle(list: readonly number[]): number {
  return list.toSorted((a, b) => a - b)[list.length >> 1] ?? 0
}

/** The table for people: printed, and kept in `latest.md`. */
export function tableOf(rows: readonly Row[]): string {
  const lines = rows.map(({ what, figure, goal, meets }) => {
    const verdict = meets === undefined ? '' : meets ? 'meets' : 'misses'
    return `| ${what} | ${figure} | ${goal ?? ''} | ${verdict} |`
  })
  return ['| what | figure | goal | |', '|---|---|---|---|', ...lines].join('\n')
}

const LATEST = join(import.meta.dirname, 'latest.md')
const HEAD =
  '# The bench, as it last ran\n\nMade by `npm run bench`; a part that runs alone replaces its own section.\n'

/** Keeps a section of the last run; the others stay as they were. */
export function keepSection(name: string, text: string, on: string): void {
  const before = existsSync(LATEST) ? readFileSync(LATEST, 'utf8') : HEAD
  const [head = HEAD, ...sections] = before.split(/^(?=## )/m)
  const others = sections.filter((section) => !section.startsWith(`## ${name}\n`))
  const machine = `${cpus().length} cores, Node ${process.versions.node}`
  const made = `## ${name}\n\n${on}, ${machine}\n\n${text}\n\n`
  writeFileSync(
    LATEST,
    `${head.trimEnd()}\n\n${[...others, made]
      .sort()
      .map((section) => section.trim())
      .join('\n\n')}\n`,
  )
}
