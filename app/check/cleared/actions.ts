'use server'

import { cookies } from 'next/headers'
import { redirect } from 'next/navigation'
import { action } from '@/lib/access/action'
import { isSecure } from '@/lib/access/public-url'
import { parseClearance } from '@/lib/forms/clearance-form'
import { lastMetOn } from '@/lib/guide/episode'
import {
  dayOfMinute,
  PHONE_COOKIE,
  PHONE_COOKIE_SECONDS,
  readPhoneMemory,
  rememberOnPhone,
} from '@/lib/guide/phone-memory'
import { minuteNow } from '../load-place'

/** Nobody is signed in: the phone remembers who cleared it. */
export const clearOnPhone = action({
  name: 'guide-clear-phone',
  needs: 'nobody',
  parse: (form) => ({ ok: true, value: form }),
  run: async ({ input }: { input: FormData }) => {
    const jar = await cookies()
    const before = readPhoneMemory(jar.get(PHONE_COOKIE)?.value)
    const parsed = parseClearance(input, { today: dayOfMinute(minuteNow()), lastFault: lastMetOn(before) })
    if (!parsed.ok) return parsed
    const { kinds, on } = parsed.value
    const at = minuteNow()
    const events = kinds.map((kind) => ({ kind, on, at, key: `by-hand.${kind}.${at}` }))
    jar.set(PHONE_COOKIE, rememberOnPhone(jar.get(PHONE_COOKIE)?.value, events), {
      path: '/',
      maxAge: PHONE_COOKIE_SECONDS,
      sameSite: 'lax',
      secure: isSecure(),
    })
    redirect('/check')
  },
})
