import { handler } from '@/lib/access/handler'
import { findLinkFor } from '@/lib/access/links'
import { isSecure } from '@/lib/access/public-url'
import { now, today } from '@/lib/clock'
import type { Act, Viewer } from '@/lib/core/viewer'
import { listEpisode, recordEpisode } from '@/lib/data/episodes'
import { findHousehold } from '@/lib/data/households'
import { asUnavailable, DatabaseUnavailable } from '@/lib/data/unavailable'
import { parseTurnedOn } from '@/lib/forms/turned-on-form'
import { type FinderStart, finderStart } from '@/lib/guide/finder-start'
import { phoneCookie, phoneCookieIn, readPhoneMemory } from '@/lib/guide/phone-memory'

/**
 * After a filter was reached with everything off, somebody turned it on again: how that went is remembered where the
 * guide remembers, in the home or on the phone. Whatever goes wrong with it, the person is led on.
 */
export const POST = handler({
  name: 'finder-turned-on',
  needs: 'nobody',
  run: async ({ request, viewer, act }) => {
    const sent = parseTurnedOn(await request.formData().catch(() => new FormData()))
    const minute = Math.floor(now().getTime() / 60_000)
    const start = { ...sent, minute }
    const link = sent.home ? await findLinkFor(request.headers, sent.home).catch(() => null) : null
    const saved = await book([viewer, link], act, start)
    const next =
      sent.answer === 'as-always'
        ? sent.back
        : saved && viewer.kind === 'account'
          ? `/home/${sent.home}/check`
          : '/check'
    const response = new Response(null, { status: 303, headers: { location: next, 'cache-control': 'no-store' } })
    if (!saved) {
      const before = phoneCookieIn(request.headers.get('cookie') ?? '')
      const events = finderStart(start, readPhoneMemory(before))
      response.headers.append('set-cookie', phoneCookie(before, events, isSecure()))
    }
    return response
  },
})

/** Books it in the home, for the first of those who ask that may; false where no home remembers it. */
async function book(viewers: (Viewer | null)[], act: Act, start: FinderStart & { home: string }): Promise<boolean> {
  try {
    for (const viewer of viewers) {
      const stored = viewer && start.home ? await findHousehold(viewer, start.home) : null
      if (!viewer || !stored) continue
      const door = viewer.kind === 'link' ? ('link' as const) : act.door
      for (;;) {
        const before = await listEpisode(viewer, stored.id)
        const events = finderStart({ ...start, on: today(stored.timeZone) }, before)
        const rows = events.map(({ kind, on, at, key }) => ({ kind, on, minute: at, key }))
        const booked = await recordEpisode({ ...act, viewer, door }, stored.id, rows, { seen: before.length })
        if (booked.ok) return true
        // Somebody gave the home's start at that moment: what this one means depends on it.
        if (booked.because !== 'changed') break
      }
    }
    return false
  } catch (error) {
    if (asUnavailable(error) instanceof DatabaseUnavailable) return false
    throw error
  }
}
