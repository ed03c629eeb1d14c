import type { Fault } from '@/lib/core/fault'
import { type Typed, typedOf } from './answers'
import { GROUPS, type Part } from './apply'

export const EDIT_BUTTONS = ['preview', 'save', 'again', 'remove', 'size', 'more'] as const

export interface Edit {
  part: Part
  button: (typeof EDIT_BUTTONS)[number]
  /** The revision that the person saw. */
  revision: number
  typed: Typed
}

/** One part of a home as it was typed, with what its button asks for; the answers are judged against the home later. */
export function parseEdit(form: FormData): { ok: true; value: Edit } | { ok: false; faults: Fault[] } {
  const all = typedOf(form)
  const first = (field: string) => all[field]?.[0] ?? ''
  const group = GROUPS.find((word) => word === first('group'))
  const revision = Number(first('revision'))
  if (!group || !Number.isSafeInteger(revision)) {
    return { ok: false, faults: [{ path: '', say: 'This page is not known any more. Open it from Details again.' }] }
  }
  const { household: _, group: __, subject: ___, revision: ____, button: _____, remove: ______, ...typed } = all
  const pressed = EDIT_BUTTONS.find((word) => word === first('button')) ?? 'preview'
  const remove = pressed === 'remove' || first('remove') === 'yes'
  return { ok: true, value: { part: { group, subject: first('subject'), remove }, button: pressed, revision, typed } }
}
