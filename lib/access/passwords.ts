import { hashPassword as scrypt, verifyPassword as verify } from 'better-auth/crypto'

export const PASSWORD_MIN = 10
export const PASSWORD_MAX = 200

/** What is wrong with a new password, or null. Length is what counts; no rule of signs and digits. */
export function passwordFault(password: string): string | null {
  if (password.length < PASSWORD_MIN)
    return `Use at least ${PASSWORD_MIN} characters. A few words are easy to keep in mind.`
  if (password.length > PASSWORD_MAX) return `Use at most ${PASSWORD_MAX} characters.`
  return null
}

export function hashPassword(password: string): Promise<string> {
  return scrypt(password)
}

/** Whether a password is the one behind a hash. */
export function isPassword(password: string, hash: string): Promise<boolean> {
  return verify({ password, hash })
}
