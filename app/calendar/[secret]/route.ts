import { plans } from '@/app/plans'
import { handler } from '@/lib/access/handler'
import { answerFeed } from '@/lib/outbound/feed'

export const dynamic = 'force-dynamic'

/** The calendar of one account or one home: whoever has the address may read it. */
export const GET = handler({
  name: 'calendar',
  needs: 'nobody',
  run: ({ request, params }) => answerFeed(request, String(params.secret), plans),
})
