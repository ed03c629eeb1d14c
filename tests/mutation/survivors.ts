import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { WHY } from './why'

/** What a report says of one file. */
export interface FileReport {
  source: string
  mutants: {
    status: string
    statusReason?: string
    replacement?: string
    location: { start: { line: number; column: number }; end: { line: number; column: number } }
  }[]
}

const LIST = join(import.meta.dirname, 'survivors.md')
const HEAD = `# Mutants that live, and why

Made by \`npm run mutation\` from its reports and the reasons in why.ts; a file that is tried again replaces its section.
A line of code, what was put in its place, and the reason. _open_: no test finds it, and one should.

`

/** Keeps the list of those that live, by file and line of code. */
export function keepSurvivors(reports: ReadonlyMap<string, FileReport>): void {
  const before = existsSync(LIST) ? readFileSync(LIST, 'utf8') : ''
  const sections = new Map(
    before
      .split(/^(?=## )/m)
      .slice(1)
      .map((text) => [text.slice(3, text.indexOf('\n')), text.trim()]),
  )
  for (const [file, report] of reports) {
    const section = sectionOf(file, report)
    if (section === null) sections.delete(file)
    else sections.set(file, section)
  }
  const sorted = [...sections].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, text]) => text)
  writeFileSync(LIST, `${HEAD}${sorted.join('\n\n')}\n`)
}

function sectionOf(file: string, { source, mutants }: FileReport): string | null {
  const lines = source.split('\n')
  const byLine = new Map<number, string[]>()
  for (const { status, replacement = '', location } of mutants) {
    if (status !== 'Survived' && status !== 'NoCoverage') continue
    const { start } = location
    const put = `\`${short(replacement)}\`${status === 'NoCoverage' ? ' (not covered)' : ''}`
    byLine.set(start.line, [...(byLine.get(start.line) ?? []), put])
  }
  if (byLine.size === 0) return null
  const told = [...byLine]
    .sort(([a], [b]) => a - b)
    .map(([number, puts]) => {
      const code = (lines[number - 1] ?? '').trim()
      const why = WHY[file]?.find(([part]) => code.includes(part))?.[1] ?? '_open_'
      return `- \`${short(code, 110)}\` → ${puts.join(', ')}: ${why}`
    })
  return `## ${file}\n\n${told.join('\n')}`
}

function short(code: string, most = 60): string {
  const line = code.replace(/\s+/g, ' ').replaceAll('`', '´')
  return line.length > most ? `${line.slice(0, most)}…` : line
}
