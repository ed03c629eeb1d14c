'use server'

import { redirect } from 'next/navigation'
import { action } from '@/lib/access/action'
import { addMessage } from '@/lib/data/messages'
import { parseMessage } from '@/lib/forms/renter-form'

const REFUSED = {
  'not-found': 'This home is no longer open to you. Ask whoever gave you the link.',
  'not-allowed': 'Your part in this home does not include this. Ask whoever owns it here.',
  closed: 'This home is closed: nothing can be sent from it.',
  'too-many': 'This home has sent as many messages today as anybody reads. If it cannot wait, call.',
}

/** Writes to whoever looks after the home. */
export const writeMessage = action<{ text: string }>({
  name: 'message-write',
  needs: 'resident',
  parse: parseMessage,
  run: async ({ input, act, viewer, householdId }) => {
    const sent = await addMessage(act, householdId, input.text)
    if (!sent.ok) return { ok: false, faults: [{ path: '', say: REFUSED[sent.because] }] }
    redirect(viewer.kind === 'link' ? '/r/write?sent=1' : `/home/${householdId}/renters?sent=1`)
  },
})
