import { handler } from '@/lib/access/handler'
import { csvText } from '@/lib/core/csv'
import { compareDays } from '@/lib/core/day'
import { detailsInWords, doorInWords, recordInWords, subjectOfRecord } from '@/lib/core/log-words'
import { subjectInWords } from '@/lib/core/subject-words'
import { taskInWords } from '@/lib/core/words'
import { getHousehold } from '@/lib/data/households'
import { parseLogQuery } from '@/lib/forms/log-filter'
import { loadLog } from '../load-log'

const HEAD = ['Day', 'What', 'Which', 'Details', 'State', 'Who', 'When (UTC)', 'How']

/** The log as a table, filtered as the page is. */
export const GET = handler({
  name: 'log-csv',
  needs: 'see',
  run: async ({ request, viewer, act, householdId }) => {
    const stored = await getHousehold(viewer, householdId)
    const { query } = parseLogQuery(new URL(request.url).searchParams)
    const { entries, reminders, pauses, guide } = await loadLog({ viewer, at: act.at }, stored, query)
    const rows = entries.map(({ record, by, at, door, undone, correctedBy }) => [
      record.on,
      recordInWords(record),
      subjectInWords(stored.household, subjectOfRecord(record)),
      detailsInWords(record).join('; '),
      undone ? 'taken back' : correctedBy ? 'corrected since' : 'stands',
      by.name,
      at,
      doorInWords(door),
    ])
    const reminded = reminders.flatMap(({ on, name, at, channel, items }) =>
      items.map(({ task, subject }) => [
        on,
        `Reminded: ${taskInWords(task)}`,
        subjectInWords(stored.household, subject),
        '',
        '',
        name,
        at,
        channel === 'mail' ? 'by mail' : 'by a notice in the browser',
      ]),
    )
    const checked = guide.map(({ on, what, details, by, at, door }) => [
      ...[on, what, '', details ?? '', '', by, at],
      doorInWords(door),
    ])
    const paused = pauses.map((pause) => [
      pause.from,
      pause.kind === 'away' ? 'Nobody at home' : `Put off: ${taskInWords(pause.task)}`,
      pause.kind === 'away' ? '' : subjectInWords(stored.household, pause.subject),
      `until ${pause.until}`,
      pause.ended ? 'ended early' : pause.running ? 'stands' : 'over',
      pause.by.name,
      pause.at,
      doorInWords(pause.door),
    ])
    const all = [...rows, ...paused, ...reminded, ...checked].sort((a, b) => compareDays(b[0] ?? '', a[0] ?? ''))
    return new Response(csvText([HEAD, ...all]), {
      headers: {
        'content-type': 'text/csv; charset=utf-8',
        'content-disposition': 'attachment; filename="log.csv"',
        'cache-control': 'private, no-store',
      },
    })
  },
})
