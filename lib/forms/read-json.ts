import type { Fault } from '@/lib/core/fault'
import { type Path, pathText } from './fault'

/** Deeper than any household file, far from what could exhaust a machine. */
const DEEPEST = 16

interface Container {
  isList: boolean
  /** Keys seen so far, to find the second of two. */
  seen: Set<string>
  step: string | number
  /** What the grammar allows next inside it. */
  next: 'key-or-end' | 'key' | 'colon' | 'value-or-end' | 'value' | 'comma-or-end'
}

/**
 * JSON text as a value. `JSON.parse` reads it; a second reading, for what that keeps to itself, finds a key that
 * stands twice in one group (the first would silently be lost), nesting without end, and the line of a slip.
 */
export function readJson(text: string): { ok: true; value: unknown } | { ok: false; faults: Fault[] } {
  const faults: Fault[] = []
  const slip = scan(text, faults)
  if (slip) return { ok: false, faults: [slip] }
  if (faults.length > 0) return { ok: false, faults }
  try {
    return { ok: true, value: JSON.parse(text) }
  } catch (error) {
    return { ok: false, faults: [{ path: '', say: `is not JSON: ${(error as Error).message}` }] }
  }
}

const TOKEN = /[\t\n\r ]*(?:([{}[\],:])|(")|(-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)(?![\w.+-]))/y

function scan(text: string, faults: Fault[]): Fault | undefined {
  const stack: Container[] = []
  let at = 0
  let isDone = false
  while (true) {
    TOKEN.lastIndex = at
    const token = TOKEN.exec(text)
    const inside = stack.at(-1)
    if (!token) return text.slice(at).trim() === '' && isDone ? undefined : slipAt(text, at, wanted(inside, isDone))
    const start = TOKEN.lastIndex - (token[1] ?? token[2] ?? token[3] ?? '').length
    const end = token[2] ? endOfString(text, start) : TOKEN.lastIndex
    if (end === undefined) return slipAt(text, start, 'a text that ends with a quotation mark on the same line')
    const what = token[1] ?? (token[2] ? 'text' : 'plain')
    if (isDone) return slipAt(text, start, wanted(inside, isDone))

    if (inside && (what === '}' || what === ']')) {
      if (inside.isList !== (what === ']') || !inside.next.endsWith('end'))
        return slipAt(text, start, wanted(inside, false))
      stack.pop()
      isDone = stack.length === 0
    } else if (inside && what === ',') {
      if (inside.next !== 'comma-or-end') return slipAt(text, start, wanted(inside, false))
      inside.next = inside.isList ? 'value' : 'key'
    } else if (inside && what === ':') {
      if (inside.next !== 'colon') return slipAt(text, start, wanted(inside, false))
      inside.next = 'value'
    } else if (inside && what === 'text' && inside.next.startsWith('key')) {
      const key = JSON.parse(text.slice(start, end)) as string
      inside.step = key
      if (inside.seen.has(key)) faults.push(twice(stack))
      inside.seen.add(key)
      inside.next = 'colon'
    } else {
      const isValue = what === 'text' || what === 'plain' || what === '{' || what === '['
      if (!isValue || (inside && !inside.next.startsWith('value'))) return slipAt(text, start, wanted(inside, false))
      if (inside) {
        if (typeof inside.step === 'number') inside.step++
        inside.next = 'comma-or-end'
      } else isDone = what === 'text' || what === 'plain'
      if (what === '{' || what === '[') {
        if (stack.length === DEEPEST)
          return { path: pathOf(stack), say: 'is nested deeper than a household file ever is' }
        stack.push({
          isList: what === '[',
          seen: new Set(),
          step: what === '[' ? -1 : '',
          next: what === '[' ? 'value-or-end' : 'key-or-end',
        })
      }
    }
    at = end
  }
}

/** Past the closing quotation mark, or nothing where the text has none, a bare line break or a wrong escape. */
function endOfString(text: string, start: number): number | undefined {
  for (let at = start + 1; at < text.length; at++) {
    const code = text.charCodeAt(at)
    if (code === 0x22) return at + 1
    if (code < 0x20) return undefined
    if (code === 0x5c) {
      if (!/^(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/.test(text.slice(at + 1, at + 6))) return undefined
      at++
    }
  }
  return undefined
}

function twice(stack: Container[]): Fault {
  return { path: pathOf(stack), say: 'stands twice in the same group; keep one of the two' }
}

function pathOf(stack: Container[]): string {
  return pathText(stack.map((container): Path[number] => container.step))
}

const WORDS: Record<Container['next'], string> = {
  'key-or-end': 'a key in quotation marks or }',
  key: 'a key in quotation marks (no comma before })',
  colon: 'a colon',
  'value-or-end': 'a value or ]',
  value: 'a value',
  'comma-or-end': 'a comma or the end',
}

function wanted(inside: Container | undefined, isDone: boolean): string {
  if (isDone) return 'nothing more'
  return inside ? WORDS[inside.next] : 'a household file, which begins with {'
}

function slipAt(text: string, from: number, expected: string): Fault {
  const at = from + (/^[\t\n\r ]*/.exec(text.slice(from, from + 10_000))?.[0].length ?? 0)
  const before = text.slice(0, at)
  const line = before.split('\n').length
  const column = at - before.lastIndexOf('\n')
  const found = /^[\p{L}\p{N}.+-]{1,20}|^[^\p{Cc}\p{Cs}]/u.exec(text.slice(at, at + 20))?.[0]
  const but =
    at >= text.length ? 'the file ends there' : `there is ${found ? JSON.stringify(found) : 'an unreadable character'}`
  return { path: '', say: `is not JSON: line ${line}, column ${column} should have ${expected}, but ${but}` }
}
