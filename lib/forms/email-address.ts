import { z } from 'zod'

const SAY = 'Write an e-mail address, like name@example.org.'

/** An e-mail address as somebody types it. */
export const typedAddress = z
  .string({ error: SAY })
  .trim()
  .regex(/^[^\s\p{C}@<>",;:\\]{1,64}@[^\s\p{C}@<>",;:\\]+$/u, { error: SAY })
  .max(254, { error: SAY })
