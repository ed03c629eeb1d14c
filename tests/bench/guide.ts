import { FLOWS } from '@/content/guide/flows'
import { GUIDE_SOURCES } from '@/content/guide/sources'
import { readingGrade } from '@/lib/cli/reading-grade'
import { checkFlows } from '@/lib/guide/checker'
import { medians, type Row } from './table'

const RUNS = 3
// What somebody who changes a sentence of the guide waits for.
const GOAL_SECONDS = 10

/** The checker over all flows: every state that answers can lead to, and every invariant in each. */
export async function guideRows(): Promise<Row[]> {
  const parts = { sources: GUIDE_SOURCES, readability: { grade: readingGrade } }
  const report = checkFlows(FLOWS, parts)
  const states = Object.values(report.states).reduce((sum, count) => sum + count, 0)
  const { check } = await medians(RUNS, { check: () => checkFlows(FLOWS, parts) })
  return [
    {
      what: `checker: ${FLOWS.length} flows, ${states} states, ${report.violations.length} broken`,
      figure: `${(check / 1000).toFixed(1)} s`,
      goal: `at most ${GOAL_SECONDS} s, none broken`,
      meets: check <= GOAL_SECONDS * 1000 && report.violations.length === 0,
    },
  ]
}
