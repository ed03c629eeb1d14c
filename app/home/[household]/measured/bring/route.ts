import { handler, type Requested } from '@/lib/access/handler'
import { MOST_SPOOLED_BYTES, spool } from '@/lib/data/spool'
import { boundaryOf, CutOff, fileInForm } from '@/lib/forms/multipart-file'
import { BRING_FAULTS, type BringFault } from '../bring-faults'

// What a form puts around its file.
const AROUND_BYTES = 64 * 1024

/**
 * Takes an export from a plain form as a stream, so that the memory it needs does not grow with it; the proxy does not
 * touch this address, for it would keep the whole of it. Leads on to the page that shows what is in it.
 */
export const POST = handler({
  name: 'measured-bring',
  needs: 'manage',
  run: async (asked) => {
    const { request, householdId } = asked
    const taken = await take(asked)
    const page = `/home/${householdId}/measured`
    const to = 'id' in taken ? `${page}/${taken.id}` : `${page}?fault=${taken.fault}`
    // With scripts the page sends it itself, and wants to know where to go on.
    if (request.headers.get('accept')?.includes('application/json')) {
      const say = 'id' in taken ? null : BRING_FAULTS[taken.fault]
      return Response.json({ to, say }, { headers: { 'cache-control': 'no-store' } })
    }
    return new Response(null, { status: 303, headers: { location: to, 'cache-control': 'no-store' } })
  },
})

async function take({ request, householdId, act }: Requested): Promise<{ id: string } | { fault: BringFault }> {
  if (Number(request.headers.get('content-length') ?? 0) > MOST_SPOOLED_BYTES + AROUND_BYTES)
    return { fault: 'too-large' }
  const boundary = boundaryOf(request.headers.get('content-type'))
  if (boundary === null || request.body === null) return { fault: 'empty' }
  try {
    const taken = await spool(householdId, fileInForm(chunksOf(request.body), boundary), act.at)
    return taken.ok ? { id: taken.id } : { fault: taken.because }
  } catch (error) {
    if (error instanceof CutOff) return { fault: 'cut-off' }
    throw error
  }
}

/** An upload that breaks off ends as one that was cut off, not as a fault of ours. */
async function* chunksOf(body: ReadableStream<Uint8Array>): AsyncGenerator<Uint8Array> {
  const reader = body.getReader()
  try {
    for (;;) {
      const { done, value } = await reader.read().catch(() => {
        throw new CutOff()
      })
      if (done) return
      yield value
    }
  } finally {
    reader.cancel().catch(() => {})
  }
}
