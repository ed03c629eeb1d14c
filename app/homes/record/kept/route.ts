import { handler } from '@/lib/access/handler'
import { parseTicked } from '@/lib/forms/ticked-form'
import { recordTheTicked } from '../record-the-ticked'

// What a phone kept while it had no network. An action's address changes with every version of the app; this one does
// not, and the list kept on the phone may be of the version before.
export const POST = handler({
  name: 'record-kept',
  needs: 'account',
  run: async ({ request, viewer, act }) => {
    const parsed = parseTicked(await request.formData().catch(() => new FormData()))
    const recorded = parsed.ok ? await recordTheTicked({ input: parsed.value, viewer, act }) : parsed
    const headers = { 'cache-control': 'no-store' }
    return recorded.ok
      ? Response.json({ say: recorded.done.say }, { headers })
      : Response.json({ error: recorded.faults.map(({ say }) => say).join(' ') }, { status: 422, headers })
  },
})
