import type { Fault } from '@/lib/core/fault'

/** The largest file that a page reads, 9 MB: some sixteen hundred homes with a log each. */
export const FILE_LIMIT_BYTES = 9_000_000

/** What whoever has a larger household file or archive can do. */
export const WAY_FOR_LARGER =
  'whoever hosts this can bring larger ones by the command account -- bring, and each home has an archive of its own under its Details'

/**
 * The text of a file. UTF-8 with or without its mark is read; anything else is a fault that says what to do.
 * A file over the limit is refused before it is decoded; `larger` says what to do with one.
 */
export function readText(
  input: string | Uint8Array,
  { limitBytes = FILE_LIMIT_BYTES, larger }: { limitBytes?: number; larger?: string } = {},
): { ok: true; text: string } | { ok: false; fault: Fault } {
  if (input.length > limitBytes) {
    return refuse(`is larger than ${limitBytes / 1e6} MB, the most that is read${larger ? `: ${larger}` : ''}`)
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
