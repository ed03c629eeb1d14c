import { createHash, randomBytes } from 'node:crypto'

/** A secret for a link: 256 bits, for an address. Shown once, never stored. */
export function newToken(): string {
  return randomBytes(32).toString('base64url')
}

/** What is stored of a token. A fast hash is enough: nobody guesses 256 bits. */
export function hashToken(token: string): string {
  return createHash('sha256').update(token).digest('hex')
}
