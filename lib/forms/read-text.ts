import type { Fault } from '@/lib/core/fault'

/** The largest file that is read, 9 MB: about two thousand homes with a full log each. */
export const FILE_LIMIT_BYTES = 9_000_000

/**
 * The text of a file. UTF-8 with or without its mark is read; anything else is a fault that says what to do.
 * A file over the limit is refused before it is decoded.
 */
export function readText(input: string | Uint8Array): { ok: true; text: string } | { ok: false; fault: Fault } {
  if (input.length > FILE_LIMIT_BYTES) {
    return refuse('is larger than 9 MB, the most that is read; split it into several files')
  }
  if (typeof input === 'string') return { ok: true, text: withoutMark(input) }
  if (startsWith(input, [0xff, 0xfe]) || startsWith(input, [0xfe, 0xff])) {
    return refuse('is written in UTF-16; save it again with the encoding UTF-8')
  }
  try {
    return { ok: true, text: withoutMark(new TextDecoder('utf-8', { fatal: true }).decode(input)) }
  } catch {
    return refuse('is not written in UTF-8, the encoding that is read here; save it again with the encoding UTF-8')
  }
}

function refuse(say: string) {
  return { ok: false as const, fault: { path: '', say } }
}

function withoutMark(text: string): string {
  return text.startsWith('\uFEFF') ? text.slice(1) : text
}

function startsWith(bytes: Uint8Array, mark: readonly number[]): boolean {
  return mark.every((byte, at) => bytes[at] === byte)
}
