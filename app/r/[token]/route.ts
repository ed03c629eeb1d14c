import { setCookies } from '@/lib/access/action'
import { handler } from '@/lib/access/handler'
import { openLink } from '@/lib/access/links'

/** Opens a renter's link: a cookie takes the secret over, so that it does not stay in the address. */
export const GET = handler({
  name: 'renter-link-open',
  needs: 'nobody',
  run: async ({ request, params }) => {
    const opened = await openLink(request.headers, String(params.token ?? ''))
    if (opened.ok) await setCookies([opened.cookie])
    const to = opened.ok ? '/r' : opened.because === 'too-many' ? '/r/ended?slow=1' : '/r/ended'
    return new Response(null, { status: 303, headers: { location: to, 'cache-control': 'no-store' } })
  },
})
