import type { z } from 'zod'
import type { Fault } from '@/lib/core/fault'

export type Path = readonly PropertyKey[]

/** `['households', 0, 'filters', 1, 'nominal']` is `households[0].filters[1].nominal`. */
export function pathText(path: Path): string {
  let text = ''
  for (const step of path) {
    if (typeof step === 'number') text += `[${step}]`
    else if (/^[\p{L}_$][\p{L}\p{N}_$-]{0,80}$/u.test(String(step)))
      text += text === '' ? String(step) : `.${String(step)}`
    else text += `[${JSON.stringify(String(step).slice(0, 80))}]`
  }
  return text
}

/** zod's findings as faults, in its order; an unknown key has the path of the key itself. */
export function faultsOf(issues: readonly z.core.$ZodIssue[]): Fault[] {
  return issues.flatMap((issue) => pathsOf(issue).map((path) => ({ path: pathText(path), say: issue.message })))
}

function pathsOf(issue: z.core.$ZodIssue): Path[] {
  return issue.code === 'unrecognized_keys' ? issue.keys.map((key) => [...issue.path, key]) : [issue.path]
}

/** Every part of a value may be missing, at any depth; of a union, any key of any of its members may be there. */
export type Loose<T> = [T] extends [readonly (infer E)[]]
  ? (Loose<E> | undefined)[]
  : [T] extends [object]
    ? { [K in AllKeys<T>]?: Loose<ValueAt<T, K>> }
    : T extends readonly (infer E)[]
      ? (Loose<E> | undefined)[]
      : T

type AllKeys<T> = T extends unknown ? keyof T : never
type ValueAt<T, K extends PropertyKey> = T extends unknown ? (K extends keyof T ? T[K] : never) : never

/**
 * What is left of a value when everything that zod found fault with is taken out: what remains has the right type
 * wherever it remains, so that rules across keys can still be checked in a file with other faults. Changes `value`; what was taken out is
 * `undefined`, with its key.
 */
export function withoutFaults<T>(value: unknown, issues: readonly z.core.$ZodIssue[]): Loose<T> | undefined {
  let rest: unknown = value
  for (const path of issues.flatMap(untrustedOf)) {
    const last = path.at(-1)
    if (last === undefined) {
      // Unknown keys have a path of their own, so this is a value of the wrong type altogether.
      rest = undefined
      continue
    }
    let holder = rest
    for (const step of path.slice(0, -1)) holder = own(holder, step)
    if (Array.isArray(holder)) holder[Number(last)] = undefined
    else if (last === '__proto__') Reflect.deleteProperty(Object(holder), last)
    // The key stays: a list that could not be read is not the same as one that was left out.
    else if (typeof holder === 'object' && holder !== null) (holder as Record<PropertyKey, unknown>)[last] = undefined
  }
  return rest as Loose<T> | undefined
}

// Where the key that decides which other keys there are has no known word, none of the others was looked at.
function untrustedOf(issue: z.core.$ZodIssue): Path[] {
  return issue.code === 'invalid_union' && issue.path.length > 0 ? [issue.path.slice(0, -1)] : pathsOf(issue)
}

function own(holder: unknown, step: PropertyKey): unknown {
  return typeof holder === 'object' && holder !== null && Object.hasOwn(holder, step)
    ? (holder as Record<PropertyKey, unknown>)[step]
    : undefined
}
