import { z } from 'zod'
import type { Fault } from '@/lib/core/fault'
import { MEDIA } from '@/lib/core/household'
import type { StockLine } from '@/lib/core/orders'
import type { SupplyKind } from '@/lib/core/supplies'
import { oneOf, type SearchParams } from './homes-query'
import { typedQuantity } from './quantities'

export const MONTHS = [3, 6, 12, 24] as const

export interface SuppliesQuery {
  months: (typeof MONTHS)[number]
  leadDays: number
}

/** What an address asks of the supplies: twelve months and a week to wait for them, unless it says otherwise. */
export function parseSuppliesQuery(params: SearchParams): { query: SuppliesQuery; faults: Fault[] } {
  const months = MONTHS.find((each) => each === Number(oneOf(params, 'months'))) ?? 12
  const lead = typedQuantity({ min: 0, max: 120, unit: 'days', whole: true }).safeParse(oneOf(params, 'lead') ?? '7')
  return {
    query: { months, leadDays: lead.success ? lead.data : 7 },
    faults: lead.success ? [] : [{ path: 'lead', say: lead.error.issues[0]?.message ?? '' }],
  }
}

export function suppliesAddress({ months, leadDays }: SuppliesQuery, path = '/supplies'): string {
  return `${path}?${new URLSearchParams({ months: String(months), lead: String(leadDays) })}`
}

/** The names of a kind's two fields, `hand 16x25x1 pleated 8` and `box …`. */
export function stockFields({ size, medium, merv }: SupplyKind): { hand: string; box: string } {
  const key = `${size} ${medium} ${merv ?? 0}`
  return { hand: `hand ${key}`, box: `box ${key}` }
}

const KIND = z.tuple([
  z.string().regex(/^\d{1,2}(\.\d{1,4})?x\d{1,2}(\.\d{1,4})?x\d{1,2}(\.\d{1,4})?$/),
  z.enum(MEDIA),
  z.coerce.number().int().min(0).max(20),
])
const hand = typedQuantity({ min: 0, max: 100_000, unit: 'filters', whole: true })
const box = typedQuantity({ min: 1, max: 1000, unit: 'in a box', whole: true })

/** Every line of the shelf that the form holds; all faults at once, each at its field. An empty field is none, and one in a box. */
export function parseStock(form: FormData): { ok: true; value: StockLine[] } | { ok: false; faults: Fault[] } {
  const faults: Fault[] = []
  const lines: StockLine[] = []
  for (const [name, typed] of form) {
    if (!name.startsWith('hand ') || typeof typed !== 'string') continue
    const kind = KIND.safeParse(name.slice(5).split(' '))
    if (!kind.success) {
      faults.push({ path: '', say: 'A line of this page cannot be read. Load the page again.' })
      continue
    }
    const [size, medium, merv] = kind.data
    const fields = stockFields({ size, medium, merv })
    const onHand = hand.safeParse(typed.trim() || '0')
    const perBox = box.safeParse(String(form.get(fields.box) ?? '').trim() || '1')
    if (!onHand.success) faults.push({ path: fields.hand, say: `${size}: ${onHand.error.issues[0]?.message}` })
    if (!perBox.success) faults.push({ path: fields.box, say: `${size}: ${perBox.error.issues[0]?.message}` })
    if (onHand.success && perBox.success)
      lines.push({
        kind: { size, medium, merv: merv === 0 ? null : merv },
        onHand: onHand.data,
        perBox: perBox.data,
      })
  }
  return faults.length > 0 ? { ok: false, faults } : { ok: true, value: lines }
}
