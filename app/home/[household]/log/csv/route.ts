import { handler } from '@/lib/access/handler'
import { csvText } from '@/lib/core/csv'
import { detailsInWords, doorInWords, recordInWords, subjectOfRecord } from '@/lib/core/log-words'
import { subjectInWords } from '@/lib/core/subject-words'
import { getHousehold } from '@/lib/data/households'
import { parseLogQuery } from '@/lib/forms/log-filter'
import { loadLog } from '../load-log'

const HEAD = ['Day', 'What', 'Which', 'Details', 'State', 'Recorded by', 'Recorded at (UTC)', 'How']

/** The log as a table, filtered as the page is. */
export const GET = handler({
  name: 'log-csv',
  needs: 'see',
  run: async ({ request, viewer, householdId }) => {
    const stored = await getHousehold(viewer, householdId)
    const { query } = parseLogQuery(new URL(request.url).searchParams)
    const { entries } = await loadLog(viewer, stored, query)
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
    return new Response(csvText([HEAD, ...rows]), {
      headers: {
        'content-type': 'text/csv; charset=utf-8',
        'content-disposition': 'attachment; filename="log.csv"',
        'cache-control': 'private, no-store',
      },
    })
  },
})
