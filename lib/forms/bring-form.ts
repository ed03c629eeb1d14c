import type { Fault } from '@/lib/core/fault'

/** A household file as a form sends it: chosen or dropped, or pasted. The file wins where both are there. */
export interface Brought {
  file: File | null
  text: string
}

/** What a form to bring a file holds; the file itself is read later. */
export function parseBringForm(form: FormData): { ok: true; value: Brought } | { ok: false; faults: Fault[] } {
  const file = form.get('file')
  const text = form.get('text')
  const chosen = file instanceof File && file.size > 0 ? file : null
  const pasted = typeof text === 'string' ? text : ''
  if (chosen === null && pasted.trim() === '') {
    return { ok: false, faults: [{ path: 'file', say: 'Choose a file, or paste what stands in one.' }] }
  }
  return { ok: true, value: { file: chosen, text: pasted } }
}
