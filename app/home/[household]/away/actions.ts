'use server'

import { refresh } from 'next/cache'
import type { Done } from '@/app/parts/action-form'
import { refused } from '@/app/refusal'
import { action } from '@/lib/access/action'
import { today } from '@/lib/clock'
import { dayInWords } from '@/lib/core/day-words'
import { clearAway, saveAway } from '@/lib/data/aways'
import { getHousehold } from '@/lib/data/households'
import { parseNothing } from '@/lib/forms/account-forms'
import { parseAway } from '@/lib/forms/outbound-forms'

export const goAway = action<{ until: string }, Done>({
  name: 'go-away',
  needs: 'member',
  parse: parseAway,
  run: async ({ input, act, viewer, householdId }) => {
    const { timeZone } = await getHousehold(viewer, householdId)
    const saved = await saveAway(act, householdId, { today: today(timeZone), until: input.until })
    if (!saved.ok) return saved.because === 'fault' ? { ok: false, faults: saved.faults } : refused(saved.because)
    refresh()
    return {
      ok: true,
      done: { say: `Until ${dayInWords(input.until)} nobody is reminded of what needs somebody at home.` },
    }
  },
})

export const comeBack = action<null, Done>({
  name: 'come-back',
  needs: 'member',
  parse: parseNothing,
  run: async ({ act, householdId }) => {
    const saved = await clearAway(act, householdId)
    if (!saved.ok) return saved.because === 'fault' ? { ok: false, faults: saved.faults } : refused(saved.because)
    refresh()
    return { ok: true, done: { say: 'Welcome back. Reminders come as before.' } }
  },
})
