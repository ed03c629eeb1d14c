import { FLOWS } from '@/content/guide/flows'
import { GUIDE_SOURCES } from '@/content/guide/sources'
import { checkFlows } from '@/lib/guide/checker'
import { exportFlows } from '@/lib/guide/export'
import { violationText } from '@/lib/guide/violation'
import { readingGrade } from './reading-grade'

const USAGE = 'guide -- --json | --check'

/** `--json` prints the graph; `--check` prints each broken invariant with its path. Returns the exit status. */
function run(args: readonly string[]): number {
  const [wish, ...more] = args
  if (more.length > 0 || (wish !== '--json' && wish !== '--check')) {
    process.stderr.write(`${USAGE}\n`)
    return 2
  }
  if (wish === '--json') {
    process.stdout.write(`${JSON.stringify(exportFlows(FLOWS), null, 2)}\n`)
    return 0
  }
  const before = performance.now()
  const report = checkFlows(FLOWS, { sources: GUIDE_SOURCES, readability: { grade: readingGrade } })
  for (const violation of report.violations) process.stdout.write(`${violationText(violation)}\n`)
  const states = Object.values(report.states).reduce((sum, count) => sum + count, 0)
  const seconds = ((performance.now() - before) / 1000).toFixed(1)
  process.stderr.write(`${FLOWS.length} flows, ${states} states, ${report.violations.length} broken, ${seconds} s\n`)
  return report.violations.length === 0 ? 0 : 1
}

process.exitCode = run(process.argv.slice(2))
