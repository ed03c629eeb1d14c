import { handler } from '@/lib/access/handler'
import { isHealthy } from '@/lib/data/health'

export const dynamic = 'force-dynamic'

/** For a monitor or a proxy: whether the database answers and no migration is missing. */
export const GET = handler({
  name: 'healthz',
  needs: 'nobody',
  run: async () => {
    const ok = await isHealthy()
    return Response.json({ ok }, { status: ok ? 200 : 503, headers: { 'cache-control': 'no-store' } })
  },
})
