'use client'

import { startTransition, useActionState, useEffect, useState } from 'react'
import { ActionForm } from '@/app/parts/action-form'
import { ErrorSummary } from '@/app/parts/error-summary'
import { SubmitButton } from '@/app/parts/submit-button'
import { NOT_SENT } from '@/lib/core/answer'
import type { Fault } from '@/lib/core/fault'
import { endNotices, showNotices } from './actions'

/** Notices in this browser. Without scripts there are none, so nothing is offered. */
export function Notices({ publicKey, browsers }: { publicKey: string; browsers: number }) {
  const [answer, send, isSending] = useActionState(showNotices, NOT_SENT)
  const [canShow, setCanShow] = useState(false)
  const [refused, setRefused] = useState<Fault[]>([])
  useEffect(() => setCanShow('PushManager' in window && 'serviceWorker' in navigator), [])
  // The form that ended them stays, to say so.
  const [hadSome, setHadSome] = useState(browsers > 0)
  if (browsers > 0 && !hadSome) setHadSome(true)
  if (!canShow && !hadSome) return null

  async function subscribe() {
    const asked = await formOf(publicKey)
    setRefused(asked.ok ? [] : [{ path: '', say: asked.say }])
    if (asked.ok) startTransition(() => send(asked.form))
  }

  return (
    <section aria-labelledby="notices">
      <h2 id="notices">In the browser</h2>
      <ErrorSummary faults={[...refused, ...answer.faults].map(({ say }) => ({ say }))} />
      <p>A notice at the same hours as the mails; it needs no mail server.</p>
      {answer.done && <p role="status">{answer.done.say}</p>}
      {canShow && (
        <p>
          <button type="button" onClick={subscribe} aria-disabled={isSending || undefined}>
            Show notices in this browser
          </button>
        </p>
      )}
      {hadSome && (
        <ActionForm action={endNotices}>
          {browsers > 0 && (
            <>
              <p>{browsers === 1 ? 'One browser shows' : `${browsers} browsers show`} notices to you.</p>
              <SubmitButton kind="quiet">End them everywhere</SubmitButton>
            </>
          )}
        </ActionForm>
      )}
    </section>
  )
}

async function formOf(publicKey: string): Promise<{ ok: true; form: FormData } | { ok: false; say: string }> {
  if ((await Notification.requestPermission()) !== 'granted')
    return {
      ok: false,
      say: 'The browser does not allow notices from here. Its settings for this site can change that.',
    }
  try {
    await navigator.serviceWorker.register('/sw.js')
    const worker = await navigator.serviceWorker.ready
    const subscription = await worker.pushManager.subscribe({ userVisibleOnly: true, applicationServerKey: publicKey })
    const { endpoint = '', keys = {} } = subscription.toJSON()
    const form = new FormData()
    for (const [name, value] of Object.entries({ endpoint, p256dh: keys.p256dh ?? '', auth: keys.auth ?? '' }))
      form.set(name, value)
    return { ok: true, form }
  } catch {
    return { ok: false, say: 'The browser could not reach its own service for notices. Try again later.' }
  }
}
