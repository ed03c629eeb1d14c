import type { Fault } from '@/lib/core/fault'
import { type Typed, typedOf } from './answers'
import { BUTTONS, type Button, findStep, type Step } from './steps'

/** One screen as it was sent: nothing of it is judged yet, so that it can be kept however it is. */
export function parseStep(
  form: FormData,
): { ok: true; value: { step: Step; button: Button; typed: Typed } } | { ok: false; faults: Fault[] } {
  const { step: [name = ''] = [], button: [button = ''] = [], ...typed } = typedOf(form)
  const step = findStep(name)
  if (!step || step === 'check')
    return { ok: false, faults: [{ path: '', say: 'This screen is not known. Go back to the first one.' }] }
  return { ok: true, value: { step, button: BUTTONS.find((word) => word === button) ?? 'next', typed } }
}
