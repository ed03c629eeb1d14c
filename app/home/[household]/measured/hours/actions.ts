'use server'

import { action } from '@/lib/access/action'
import { type Typed, typedOf } from '@/lib/forms/describe/answers'
import { readHours } from '@/lib/forms/hours-form'
import { onlyFresh, runTyped } from '../run-typed'
import type { TypedAnswer } from '../typed-answer'

/** Shows what the hours that a thermostat shows come to, and saves them when that was seen. */
export const keepHours = action<Typed, TypedAnswer>({
  name: 'measured-keep-hours',
  needs: 'manage',
  parse: (form) => ({ ok: true, value: typedOf(form) }),
  run: (asked) => runTyped(asked, (typed, home, on) => onlyFresh(readHours(typed, home.systems, on))),
})
