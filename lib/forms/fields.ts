import { z } from 'zod'
import { type Day, FIRST_DAY, isDay, LAST_DAY } from '@/lib/core/day'

/** A value from a file as it may stand in a message: short, on one line, never a control character. */
export function shown(value: unknown): string {
  if (typeof value === 'string')
    return `the text ${JSON.stringify(value.length > 40 ? `${value.slice(0, 40)}…` : value)}`
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'object' && value !== null) return 'a group of keys'
  return typeof value === 'number' && !Number.isFinite(value) ? 'no number that can be used' : String(value)
}

/** One fault a field, and one sentence for it: what the value must be, then what it is. */
export function field<T>(accepts: (value: unknown) => boolean, must: string) {
  return z.custom<T>(accepts, {
    error: (issue) => (issue.input === undefined ? `is missing; it ${must}` : `${must}, but is ${shown(issue.input)}`),
  })
}

export interface Limits {
  min: number
  max: number
  /** In words, for the message: `inches`. */
  unit?: string
  whole?: boolean
}

/** A number between two limits, both included. Text is no number, `1e999` neither; −0 becomes 0. */
export function number({ min, max, unit, whole }: Limits) {
  const kind = whole ? 'be a whole number' : 'be'
  return field<number>(
    (value) => typeof value === 'number' && value >= min && value <= max && (!whole || Number.isInteger(value)),
    `must ${kind} between ${spaced(min)} and ${spaced(max)}${unit ? ` (${unit})` : ''}`,
  ).transform((value) => value + 0)
}

/** `400 000`: easier to read than six digits in a row. */
function spaced(value: number): string {
  return Math.abs(value) < 10_000 ? String(value) : String(value).replace(/\B(?=(\d{3})+$)/g, ' ')
}

/** A year such as 2012. */
export function year() {
  return number({ min: 1900, max: 2099, whole: true, unit: 'a year' })
}

/** A day that exists, `2026-11-25`. */
export function day() {
  return field<Day>(
    (value) => typeof value === 'string' && isDay(value),
    `must be a day that exists, written like 2026-11-25, from ${FIRST_DAY} to ${LAST_DAY}`,
  )
}

/** Text for people, with something to see in it and no control characters or broken ones. */
export function text(longest: number) {
  return field<string>(
    (value) =>
      typeof value === 'string' && value.trim() !== '' && value.length <= longest && !/[\p{Cc}\p{Cs}]/u.test(value),
    `must be a text of 1 to ${longest} characters without line breaks`,
  )
}

/** A short text by which the rest of the file names this part. */
export function id() {
  return text(64)
}

export function yesNo() {
  return field<boolean>((value) => typeof value === 'boolean', 'must be true or false')
}

/** One of a few words. */
export function oneOf<const T extends readonly string[]>(words: T) {
  return z.enum(words, {
    error: (issue) => {
      const must = `must be one of ${words.join(', ')}`
      return issue.input === undefined ? `is missing; it ${must}` : `${must}, but is ${shown(issue.input)}`
    },
  })
}

/** A list, left out where it would be empty. */
export function list<T extends z.ZodType>(of: T, what: string) {
  return z
    .array(of, { error: (issue) => `must be a list of ${what} in square brackets, but is ${shown(issue.input)}` })
    .default(() => [])
}

/** A group of exactly these keys: any other key is a fault. */
export function keys<T extends z.ZodRawShape>(shape: T) {
  const known = Object.keys(shape).join(', ')
  return z.strictObject(shape, {
    error: (issue) => {
      if (issue.code === 'unrecognized_keys') return `is not a key that is known here; known are ${known}`
      const must = 'must be a group of keys in braces'
      return issue.input === undefined ? `is missing; it ${must}` : `${must}, but is ${shown(issue.input)}`
    },
  })
}

/** What is said where one key decides which other keys there are, and it has no known word. */
export function choice(key: string, words: readonly string[]) {
  return {
    error: (issue: { input?: unknown; code?: string }) => {
      const input = issue.input
      if (typeof input !== 'object' || input === null || Array.isArray(input)) {
        const must = 'must be a group of keys in braces'
        return input === undefined ? `is missing; it ${must}` : `${must}, but is ${shown(input)}`
      }
      const value = (input as Record<string, unknown>)[key]
      const must = `must be one of ${words.join(', ')}`
      return value === undefined ? `is missing; it ${must}` : `${must}, but is ${shown(value)}`
    },
  }
}
