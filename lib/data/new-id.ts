import { randomBytes } from 'node:crypto'

// No letters that are read for one another; 16 of 32 letters are 80 bits.
const LETTERS = '0123456789abcdefghjkmnpqrstvwxyz'

/** A fresh id for an address: short, and not to be guessed. */
export function newId(): string {
  return Array.from(randomBytes(16), (byte) => LETTERS[byte % 32]).join('')
}
