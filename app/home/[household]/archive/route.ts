import { zipSync } from 'fflate'
import { handler } from '@/lib/access/handler'
import { archiveOf } from '@/lib/data/archive'

/** The household file and its photos as one archive. */
export const GET = handler({
  name: 'archive',
  needs: 'see',
  run: async ({ viewer, householdId }) => {
    const files = await archiveOf(viewer, householdId)
    if (!files) return Response.json({ error: 'There is nothing here.' }, { status: 404 })
    // Pictures are packed already: stored as they are.
    const entries = files.map(({ path, bytes }) => [path, [bytes, { level: path.endsWith('.json') ? 6 : 0 }]] as const)
    const zip = zipSync(Object.fromEntries(entries) as Parameters<typeof zipSync>[0])
    return new Response(new Uint8Array(zip), {
      headers: {
        'content-type': 'application/zip',
        'content-disposition': `attachment; filename="plenum-${householdId}.zip"`,
        'cache-control': 'private, no-store',
      },
    })
  },
})
