import type { z } from 'zod'
import type { Fault } from '@/lib/core/fault'
import type { AnnualClimate, NominalSize } from '@/lib/core/household'
import type { ZoneRow } from '@/lib/core/tables'
import { typedQuantity } from '../quantities'

/** What was typed, by field; a field that is ticked several times has several texts. */
export type Typed = Record<string, string[]>

/** What a group of questions comes to, or everything that is wrong with it; a fault's path is its field. */
export type Read<T> = { ok: true; value: T } | { ok: false; faults: Fault[] }

/** The tables that a description is read with: content, handed in. */
export interface DescribeTables {
  stations: readonly Station[]
  zones: readonly ZoneRow[]
  commonSizes: readonly NominalSize[]
}

/** A place whose climate a home may start from. */
export interface Station extends Omit<AnnualClimate, 'kind'> {
  id: string
  name: string
  timeZone: string
  elevationFt: number
}

/** By screen, what was typed there. */
export type DraftAnswers = Record<string, Typed>

/** Every field of a form but Next's own, which begin with `$`. Long texts are cut: no answer here is longer. */
export function typedOf(form: FormData): Typed {
  // A field may be called `constructor`: only what was sent counts.
  const typed = new Map<string, string[]>()
  for (const [field, value] of form) {
    if (typeof value !== 'string' || field.startsWith('$') || field === '__proto__') continue
    typed.set(field, [...(typed.get(field) ?? []), value.slice(0, 2000)])
  }
  return Object.fromEntries(typed)
}

/** Reads one form's fields and gathers every fault, so that all are said at once. */
export class Answers {
  readonly faults: Fault[] = []

  constructor(private readonly typed: Typed) {}

  /** The text of a field without the spaces around it; empty where it was not sent. */
  text(field: string): string {
    return Object.hasOwn(this.typed, field) ? (this.typed[field]?.[0] ?? '').trim() : ''
  }

  all(field: string): string[] {
    return Object.hasOwn(this.typed, field) ? (this.typed[field] ?? []) : []
  }

  isTicked(field: string): boolean {
    return this.text(field) !== ''
  }

  fault(path: string, say: string): undefined {
    this.faults.push({ path, say })
    return undefined
  }

  /** A field that must be read; undefined after a fault. */
  take<T>(field: string, schema: z.ZodType<T, string>): T | undefined {
    const read = schema.safeParse(this.text(field))
    return read.success ? read.data : this.fault(field, read.error.issues[0]?.message ?? 'This could not be read.')
  }

  /** The same, where an empty field means that nobody knows. */
  maybe<T>(field: string, schema: z.ZodType<T, string>): T | undefined {
    return this.text(field) === '' ? undefined : this.take(field, schema)
  }

  /** A number within limits, where an empty field means that nobody knows. */
  quantity(field: string, limits: { min: number; max: number; unit: string; whole?: boolean }): number | undefined {
    return this.maybe(field, typedQuantity(limits))
  }

  /** One of a few words, or a fault that says what to do. */
  choice<const T extends readonly string[]>(field: string, words: T, say: string): T[number] | undefined {
    const word = this.text(field)
    return words.includes(word) ? word : this.fault(field, say)
  }

  /** A line of text for people. */
  line(field: string, longest: number): string {
    const text = this.text(field)
    if (text.length > longest) this.fault(field, `Write ${longest} characters at most.`)
    else if (/[\p{Cc}\p{Cs}]/u.test(text)) this.fault(field, 'Write it on one line, in plain characters.')
    return text
  }

  /** The value, unless anything was wrong. */
  result<T>(value: () => T): Read<T> {
    return this.faults.length > 0 ? { ok: false, faults: this.faults } : { ok: true, value: value() }
  }
}

/** A value that was read without a fault. Throws where the reader forgot one. */
export function known<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('an answer without a value and without a fault')
  return value
}

/** `Wall grille 2` is `wall-grille-2`; text without a letter or digit is `fallback`. Never one of `taken`. */
export function freshId(name: string, taken: Iterable<string>, fallback: string): string {
  const used = new Set(taken)
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, 40)
    .replaceAll(/^-+|-+$/g, '')
  const base = plain || fallback
  for (let number = 1; ; number++) {
    const id = number === 1 ? base : `${base}-${number}`
    if (!used.has(id)) return id
  }
}

/** `one('x')` is `['x']`, an absent value no text: for what a form starts with. */
export function one(value: string | number | undefined | null): string[] {
  return value === undefined || value === null ? [] : [String(value)]
}
