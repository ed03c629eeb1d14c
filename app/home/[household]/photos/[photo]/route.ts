import { handler } from '@/lib/access/handler'
import { findPicture } from '@/lib/data/photos'

/** One picture, for those who may see the home. Asked anew each time: a link taken back shows nothing any more. */
export const GET = handler({
  name: 'photo',
  needs: 'visit',
  run: async ({ viewer, householdId, params }) => {
    const picture = await findPicture(viewer, householdId, String(params.photo ?? ''))
    if (!picture) return Response.json({ error: 'There is nothing here.' }, { status: 404 })
    return new Response(new Uint8Array(picture), {
      headers: {
        'content-type': 'image/webp',
        'content-disposition': 'inline; filename="photo.webp"',
        'cache-control': 'private, no-store',
      },
    })
  },
})
