import { z } from 'zod'
import type { Fault } from '@/lib/core/fault'

const PHOTO_KINDS = ['filter', 'plate', 'look'] as const

/** What a photo's form holds besides the file; the file's own bytes are judged where they are decoded. */
export interface SentPhoto {
  kind: (typeof PHOTO_KINDS)[number]
  subject: string
  file: File
}

/** Reads the form; `about` is `kind subject` in one field, so that one choice says both. */
export function parsePhotoForm(form: FormData): { ok: true; value: SentPhoto } | { ok: false; faults: Fault[] } {
  const schema = z.object({
    about: z
      .string({ error: 'Choose what the photo shows.' })
      .regex(/^(filter|plate|look) .{1,64}$/s, { error: 'Choose what the photo shows.' }),
    photo: z
      .instanceof(File, { error: 'Choose a photo.' })
      .refine((file) => file.size > 0, { error: 'Choose a photo: none was sent.' }),
  })
  const sent = schema.safeParse(Object.fromEntries(form))
  if (!sent.success) {
    return { ok: false, faults: sent.error.issues.map(({ path, message }) => ({ path: path.join('.'), say: message })) }
  }
  const { about, photo } = sent.data
  const space = about.indexOf(' ')
  return {
    ok: true,
    value: { kind: about.slice(0, space) as SentPhoto['kind'], subject: about.slice(space + 1), file: photo },
  }
}
