import { z } from 'zod'
import { type Parsed, parseForm } from './parse-form'

/** Whom to invite into many homes: `building` is left out for all of them. */
export interface InviteMany {
  role: 'manager' | 'technician'
  building?: string
}

/** A form with a role and a building; an empty building means all homes. */
export function parseInviteMany(form: FormData): Parsed<InviteMany> {
  const schema = z.object({
    role: z.enum(['manager', 'technician'], { error: 'Choose what they may do.' }),
    building: z.string().max(200, { error: 'Choose one of your buildings.' }).default(''),
  })
  const parsed = parseForm(form, schema)
  if (!parsed.ok) return parsed
  const { role, building } = parsed.value
  return { ok: true, value: building === '' ? { role } : { role, building } }
}
