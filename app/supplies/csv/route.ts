import { handler } from '@/lib/access/handler'
import { csvText } from '@/lib/core/csv'
import { parseSuppliesQuery } from '@/lib/forms/stock-form'
import { orderFor } from '../orders'

const HEAD = [
  'Size (in)',
  'Kind',
  'MERV',
  'Needed',
  'On the shelf',
  'To buy',
  'In a box',
  'Boxes',
  'First short on',
  'Order by',
]

export const GET = handler({
  name: 'supplies-csv',
  needs: 'account',
  run: async ({ request, viewer }) => {
    const { query } = parseSuppliesQuery(Object.fromEntries(new URL(request.url).searchParams))
    const { on, lines } = await orderFor(viewer, query)
    const rows = lines
      .filter(({ toBuy }) => toBuy > 0)
      .map(({ kind, needed, onHand, toBuy, perBox, boxes, shortOn, orderBy }) => [
        ...[kind.size, kind.medium, kind.merv === null ? '' : String(kind.merv)],
        ...[needed, onHand, toBuy, perBox, boxes].map(String),
        ...[shortOn ?? '', orderBy ?? ''],
      ])
    return new Response(csvText([HEAD, ...rows]), {
      headers: {
        'content-type': 'text/csv; charset=utf-8',
        'content-disposition': `attachment; filename="filters-${on}.csv"`,
        'cache-control': 'no-store',
      },
    })
  },
})
