import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { atLeast, keepSection, type Row, tableOf } from '../bench/table'
import { type FileReport, keepSurvivors } from './survivors'

/** What became of the mutants of a file; `still` are those that only exist while a module is read, which are not tried. */
interface Counts {
  killed: number
  timeout: number
  survived: number
  uncovered: number
  still: number
}

const REPORTS = join(import.meta.dirname, 'reports')
const LATEST = join(import.meta.dirname, 'latest.md')
const HEAD = `# Mutants, as they last fared

Made by \`npm run mutation\`; a file that is tried again replaces its own row. Those that live are in survivors.md.

| file | mutants | killed | out of time | lived | not covered | static, not tried | score |
|---|---|---|---|---|---|---|---|
`

function countsOf({ mutants }: FileReport): Counts {
  const count = (status: string) => mutants.filter((mutant) => mutant.status === status).length
  return {
    killed: count('Killed') + count('RuntimeError'),
    timeout: count('Timeout'),
    survived: count('Survived'),
    uncovered: count('NoCoverage'),
    still: mutants.filter(({ statusReason }) => statusReason?.startsWith('Static')).length,
  }
}

function triedOf({ killed, timeout, survived, uncovered }: Counts): number {
  return killed + timeout + survived + uncovered
}

/** The share that was found, in per cent; a file with nothing to mutate has none. */
function scoreOf(counts: Counts): number {
  return (100 * (counts.killed + counts.timeout)) / triedOf(counts)
}

function rowOf(name: string, counts: Counts): string {
  const { killed, timeout, survived, uncovered, still } = counts
  const score = triedOf(counts) === 0 ? '' : `${scoreOf(counts).toFixed(1)} %`
  return `| ${[name, triedOf(counts), killed, timeout, survived, uncovered, still, score].join(' | ')} |`
}

/** The rows of the table as it was kept. */
function keptCounts(): Map<string, Counts> {
  const text = existsSync(LATEST) ? readFileSync(LATEST, 'utf8') : ''
  const rows = text.matchAll(/^\| (lib\S+) \| \d+ \| (\d+) \| (\d+) \| (\d+) \| (\d+) \| (\d+) \|/gm)
  return new Map(
    [...rows].map(([, name = '', ...numbers]) => {
      const [killed = 0, timeout = 0, survived = 0, uncovered = 0, still = 0] = numbers.map(Number)
      return [name, { killed, timeout, survived, uncovered, still }]
    }),
  )
}

function sumOf(all: Iterable<Counts>): Counts {
  const total: Counts = { killed: 0, timeout: 0, survived: 0, uncovered: 0, still: 0 }
  for (const counts of all) for (const key of Object.keys(total) as (keyof Counts)[]) total[key] += counts[key]
  return total
}

const counts = keptCounts()
const reports = readdirSync(REPORTS).filter((name) => /^\d+\.json$/.test(name))
const tried = new Map<string, FileReport>()
for (const name of reports.sort()) {
  const { files } = JSON.parse(readFileSync(join(REPORTS, name), 'utf8')) as { files: Record<string, FileReport> }
  for (const [file, report] of Object.entries(files)) tried.set(file, report)
}
for (const [file, report] of tried) counts.set(file, countsOf(report))
keepSurvivors(tried)
const rows = [...counts].sort(([a], [b]) => (a < b ? -1 : 1))
const on = new Date().toISOString().slice(0, 10)
const lines = [...rows.map(([name, each]) => rowOf(name, each)), rowOf('**all**', sumOf(counts.values()))]
writeFileSync(LATEST, `${HEAD}${lines.join('\n')}\n\n${on}\n`)

const told: Row[] = ['lib/core', 'lib/guide'].map((room) => {
  const total = sumOf(rows.filter(([name]) => name.startsWith(`${room}/`)).map(([, each]) => each))
  const files = rows.filter(([name]) => name.startsWith(`${room}/`)).length
  return atLeast(`${room}: of ${triedOf(total)} mutants in ${files} files, found`, scoreOf(total), 85, '%')
})
keepSection('mutation', tableOf(told), on)
console.log(lines.join('\n'))
