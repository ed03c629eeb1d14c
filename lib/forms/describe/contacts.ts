import { emergencyNumber } from '../household-schema'
import { Answers, one, type Read, type Typed } from './answers'

export const CONTACT_KINDS = ['technician', 'landlord', 'gas-company', 'other'] as const

/** Whom to call, as `lib/data` keeps it. */
export interface TypedContact {
  id: string
  kind: (typeof CONTACT_KINDS)[number]
  name: string | null
  phone: string | null
  email: string | null
  note: string | null
}

export interface Contacts {
  contacts: TypedContact[]
  emergencyNumber: string | undefined
  accessNote: string
}

const FIELDS = ['name', 'phone', 'email', 'note'] as const

/** One contact of each kind (`technician-phone`, …), the emergency number and how to get in. */
export function readContacts(typed: Typed): Read<Contacts> {
  const answers = new Answers(typed)
  const contacts = CONTACT_KINDS.flatMap((kind): TypedContact[] => {
    const [name, phone, email, note] = FIELDS.map(
      (field) => answers.line(`${kind}-${field}`, field === 'note' ? 1000 : 200) || null,
    )
    if (phone && !/^[\d\s().+*#/x,-]{2,60}$/i.test(phone))
      answers.fault(`${kind}-phone`, 'Write the telephone number in digits, such as 555 0134.')
    if (email && !/^[^\s@]+@[^\s@]+\.[^\s@]+$/.test(email))
      answers.fault(`${kind}-email`, 'Write the e-mail as name@example.org.')
    if (!name && !phone && !email && !note) return []
    return [{ id: kind, kind, name: name ?? null, phone: phone ?? null, email: email ?? null, note: note ?? null }]
  })
  const number = answers.text('emergency')
  if (number !== '' && !emergencyNumber.safeParse(number).success) {
    answers.fault('emergency', 'Write the emergency number in digits, such as 911 or 112.')
  }
  const accessNote = answers.line('access', 1000)
  return answers.result(() => ({ contacts, emergencyNumber: number || undefined, accessNote }))
}

/** The fields as what is kept fills them. */
export function contactsTyped(kept: {
  contacts: readonly TypedContact[]
  emergencyNumber?: string | undefined
  accessNote: string | null
}): Typed {
  return {
    ...Object.fromEntries(
      kept.contacts.flatMap((contact) => FIELDS.map((field) => [`${contact.kind}-${field}`, one(contact[field])])),
    ),
    emergency: one(kept.emergencyNumber),
    access: one(kept.accessNote),
  }
}
