import type { z } from 'zod'
import type { Fault } from '@/lib/core/fault'
import { faultsOf } from './fault'

export type Parsed<T> = { ok: true; value: T } | { ok: false; faults: Fault[] }

/**
 * Reads a form by a schema of its fields. `also` finds what a field alone does not show; it is asked in any case, so
 * that all faults come at once, and it sees a field that was left out as the empty text.
 */
export function parseForm<T>(
  form: FormData,
  schema: z.ZodType<T>,
  also: (field: (name: string) => string) => Fault[] = () => [],
): Parsed<T> {
  const fields = new Map<string, string>()
  for (const [name, value] of form) if (typeof value === 'string' && !fields.has(name)) fields.set(name, value)
  const parsed = schema.safeParse(Object.fromEntries(fields))
  const field = (name: string) => fields.get(name) ?? ''
  const faults = [...(parsed.success ? [] : faultsOf(parsed.error.issues)), ...also(field)]
  return parsed.success && faults.length === 0 ? { ok: true, value: parsed.data } : { ok: false, faults }
}
