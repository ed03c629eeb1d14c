'use server'

import { redirect } from 'next/navigation'
import { action } from '@/lib/access/action'
import { today } from '@/lib/clock'
import { getHousehold } from '@/lib/data/households'
import { type Typed, typedOf } from '@/lib/forms/describe/answers'
import { readMeter } from '@/lib/forms/meter-form'
import { saveTyped } from '../save-typed'
import { askedAgain, type TypedAnswer } from '../typed-answer'

const MORE_ROWS = 6

/** Shows what stands of an hour meter come to, and saves them when that was seen. */
export const keepMeter = action<Typed, TypedAnswer>({
  name: 'measured-keep-meter',
  needs: 'manage',
  parse: (form) => ({ ok: true, value: typedOf(form) }),
  run: async ({ input, act, viewer, householdId }) => {
    const { button: pressed, household: _, ...typed } = input
    const button = pressed?.[0]
    if (button === 'again' || button === 'more')
      return { ok: true, done: askedAgain(typed, button === 'more' ? MORE_ROWS : 0) }
    const { household: home } = await getHousehold(viewer, householdId)
    const on = today(home.timeZone)
    const read = readMeter(typed, home.systems, on)
    if (!read.ok) return read
    const { readings: fresh, quantity } = read.value
    const keep = button === 'save'
    const ran = await saveTyped({ act, householdId, home, on, fresh, quantities: [quantity], typed, keep })
    if ('saved' in ran) redirect(`/home/${householdId}/measured?did=${ran.saved}`)
    return ran
  },
})
