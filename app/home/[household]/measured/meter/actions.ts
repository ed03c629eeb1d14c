'use server'

import { action } from '@/lib/access/action'
import { type Typed, typedOf } from '@/lib/forms/describe/answers'
import { readMeter } from '@/lib/forms/meter-form'
import { onlyFresh, runTyped } from '../run-typed'
import type { TypedAnswer } from '../typed-answer'

/** Shows what stands of an hour meter come to, and saves them when that was seen. */
export const keepMeter = action<Typed, TypedAnswer>({
  name: 'measured-keep-meter',
  needs: 'manage',
  parse: (form) => ({ ok: true, value: typedOf(form) }),
  run: (asked) => runTyped(asked, (typed, home, on) => onlyFresh(readMeter(typed, home.systems, on))),
})
