import { handler } from '@/lib/access/handler'
import { now } from '@/lib/clock'
import { csvText } from '@/lib/core/csv'
import { compareNames } from '@/lib/core/home-list'
import { sheetRows } from '@/lib/core/unit-sheet'
import { may } from '@/lib/core/viewer'
import { listHomes, readInParts, type StoredHousehold } from '@/lib/data/households'

// Whoever may bring a sheet back may take it: it holds how to get in.
export const GET = handler({
  name: 'homes-csv',
  needs: 'account',
  run: async ({ viewer }) => {
    const homes = (await listHomes(viewer)).filter(
      ({ building, state, role }) => building !== null && state === 'open' && may(role, 'manage'),
    )
    const stored: StoredHousehold[] = []
    const ids = homes.map(({ id }) => id)
    for await (const part of readInParts(viewer, ids)) stored.push(...part)
    stored.sort((a, b) => compareNames(a.building ?? '', b.building ?? '') || compareNames(a.name, b.name))
    return new Response(csvText(sheetRows(stored)), {
      headers: {
        'content-type': 'text/csv; charset=utf-8',
        'content-disposition': `attachment; filename="units-${now().toISOString().slice(0, 10)}.csv"`,
        'cache-control': 'no-store',
      },
    })
  },
})
