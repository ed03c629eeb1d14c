import { MOST_BYTES, type PhotoFault } from '@/app/photo-faults'
import { handler, type Requested } from '@/lib/access/handler'
import { savePhoto } from '@/lib/data/photos'
import { parsePhotoForm } from '@/lib/forms/photo-form'

/** Takes a photo from a plain form; the answer leads back to the page of photos, which says how it went. */
export const POST = handler({
  name: 'photo-add',
  needs: 'resident',
  run: async (asked) => {
    const fault = await keep(asked)
    const { viewer, householdId } = asked
    const back = viewer.kind === 'link' ? '/r/photos' : `/home/${householdId}/photos`
    const query = fault ? `fault=${fault}` : 'did=added'
    return new Response(null, { status: 303, headers: { location: `${back}?${query}`, 'cache-control': 'no-store' } })
  },
})

async function keep({ request, act, householdId }: Requested): Promise<PhotoFault | null> {
  if (Number(request.headers.get('content-length') ?? 0) > MOST_BYTES) return 'too-large'
  const form = await request.formData().catch(() => null)
  if (form === null) return 'cut-off'
  const parsed = parsePhotoForm(form)
  if (!parsed.ok) return 'form'
  const { kind, subject, file } = parsed.value
  const saved = await savePhoto(act, householdId, { kind, subject, sent: Buffer.from(await file.arrayBuffer()) })
  return saved.ok ? null : saved.because
}
