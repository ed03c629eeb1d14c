import { handler } from '@/lib/access/handler'
import { publicUrl } from '@/lib/access/public-url'
import { apiDocument } from '@/lib/forms/api-document'

export const dynamic = 'force-dynamic'

/** What programs may ask for, described for programs. */
export const GET = handler({
  name: 'openapi',
  needs: 'nobody',
  run: async () => Response.json(apiDocument(publicUrl()), { headers: { 'cache-control': 'no-cache' } }),
})
