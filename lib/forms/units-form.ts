import type { Fault } from '@/lib/core/fault'

/** A sheet of units as its form sends it: a file, or what stood in the file that was shown before. */
export interface UnitsForm {
  file: File | null
  text: string
  /** What each column was said to be; null before anybody said so. */
  columns: string[] | null
  /** Where new units stand: `building …`, `station …` or `zone …`; empty before anybody said so. */
  place: string
  timeZone: string
  /** Whether it is to be kept, or only to be shown. */
  keep: boolean
}

export function parseUnitsForm(form: FormData): { ok: true; value: UnitsForm } | { ok: false; faults: Fault[] } {
  const text = (name: string) => {
    const value = form.get(name)
    return typeof value === 'string' ? value : ''
  }
  const sent = form.get('file')
  const file = sent instanceof File && sent.size > 0 ? sent : null
  if (file === null && text('text').trim() === '')
    return { ok: false, faults: [{ path: 'file', say: 'Choose the file with your units.' }] }
  const count = Number(text('columns'))
  const columns =
    file === null && Number.isInteger(count) && count > 0 && count <= 100
      ? Array.from({ length: count }, (_, i) => text(`column-${i}`))
      : null
  return {
    ok: true,
    value: {
      file,
      text: text('text'),
      columns,
      place: text('place'),
      timeZone: text('time-zone'),
      keep: text('do') === 'keep',
    },
  }
}
