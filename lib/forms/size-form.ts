import type { Fault } from '@/lib/core/fault'
import type { NominalSize } from '@/lib/core/household'
import { inchesFrom, typedNumber } from './lengths'

/** The three sides as typed, with the unit; `from` says whether they were read on the frame or measured. */
export interface TypedSize {
  from: 'printed' | 'measured'
  w: string
  h: string
  d: string
  u: 'in' | 'cm' | 'mm'
}

export const SIZE_FIELDS = { widthIn: 'w', heightIn: 'h', depthIn: 'd' } as const
const NAMES = { widthIn: 'The first side', heightIn: 'The second side', depthIn: 'The depth' } as const

/** A size out of an address or a form, or null where nothing was typed. Anything is taken; what is odd stays as typed. */
export function typedSize(get: (name: string) => string | null | undefined): TypedSize | null {
  const [w, h, d] = ['w', 'h', 'd'].map((name) => (get(name) ?? '').slice(0, 40)) as [string, string, string]
  if (w.trim() === '' && h.trim() === '' && d.trim() === '') return null
  // All three in one field, as a frame shows them: 16x25x1.
  const whole = /^(.+?)\s*[x×*]\s*(.+?)\s*[x×*]\s*(.+)$/i.exec(w.trim())
  const [, one = w, two = h, three = d] = whole ?? []
  const unit = get('u')
  return {
    from: get('from') === 'measured' ? 'measured' : 'printed',
    w: one,
    h: two,
    d: three,
    u: unit === 'cm' || unit === 'mm' ? unit : 'in',
  }
}

/** The typed sides in inches, or a fault for each that is no number. What can be a filter is decided in lib/core. */
export function parseSize(typed: TypedSize): { ok: true; value: NominalSize } | { ok: false; faults: Fault[] } {
  const faults: Fault[] = []
  function side(key: keyof typeof SIZE_FIELDS): number {
    const field = SIZE_FIELDS[key]
    const text = typed[field].trim()
    const value = typedNumber(text)
    if (value !== undefined) return inchesFrom(value, typed.u)
    const but = text === '' ? 'is missing' : `is no number: “${text}”`
    faults.push({ path: field, say: `${NAMES[key]} ${but}. Write it like 16 or 15 1/2.` })
    return 0
  }
  const value = { widthIn: side('widthIn'), heightIn: side('heightIn'), depthIn: side('depthIn') }
  return faults.length > 0 ? { ok: false, faults } : { ok: true, value }
}
