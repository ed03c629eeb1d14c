import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { cpuTime } from './cpu-time'

export interface Pattern {
  place: string
  source: string
  flags: string
}

/** Every regular expression that is written in the sources of a folder, by itself or as a text made into one. */
export function listPatterns(folder: string): Pattern[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(ts|tsx|mjs)$/.test(file))
    .flatMap((file) => patternsIn(join(folder, file)))
}

// After what a division never follows, up to the stroke that is not escaped and not in brackets.
const LITERAL = /(?<=[(,=:[!&|?{};>\s]|^)\/(?![*/ ])((?:\\.|\[(?:\\.|[^\]\\\n])*\]|[^/\\\n[])+)\/([dgimsuvy]*)/g

function patternsIn(file: string): Pattern[] {
  return readFileSync(file, 'utf8')
    .split('\n')
    .flatMap((line, i) => {
      if (/^\s*(\/\/|\*|\/\*)/.test(line)) return []
      return [...line.matchAll(LITERAL)].flatMap(([, source = '', flags = '']) =>
        isExpression(source, flags) ? [{ place: `${file}:${i + 1}`, source, flags }] : [],
      )
    })
}

function isExpression(source: string, flags: string): boolean {
  try {
    return new RegExp(source, flags).source !== ''
  } catch {
    return false
  }
}

const CLASSES: [RegExp, string][] = [
  [/\\d/, '0'],
  [/\\w/, 'a_'],
  [/\\s/, ' \t\n'],
  [/\\S|\.|\[\^|\\p\{L/, 'aé'],
  [/a-z|A-Z/, 'ab'],
  [/\\p\{N/, '1'],
]

/** What may make an expression look again and again: its own signs, many times, after its own beginnings. */
export function pumpsFor({ source, flags }: Pattern): { start: string; pump: string; end: string }[] {
  const own = [...source.replace(/\\[dwsSpDWbB]|\\u\{?[0-9A-Fa-f]+\}?|[\\()[\]{}?*+^$|]/g, '')].slice(0, 30)
  const signs = [...new Set([...own, ...CLASSES.filter(([of]) => of.test(source)).flatMap(([, text]) => [...text])])]
  const words = [...source.matchAll(/[a-zA-Z<>/="'-]{2,}/g)].map(([word]) => word).slice(0, 6)
  const pumps = [
    ...new Set([...signs, ...words, ...signs.slice(0, 6).flatMap((one) => signs.slice(0, 6).map((two) => one + two))]),
  ]
  const starts = ['', ...words.slice(0, 3), ...signs.slice(0, 3)]
  const all = pumps.flatMap((pump) => starts.map((start) => ({ start, pump, end: '\u0001' })))
  return flags.includes('i') ? all : all.slice(0, 400)
}

const LENGTHS = [24, 400, 10_000]

/**
 * The hostile text on which an expression takes more than its share: more than `most` milliseconds of work, and growing faster
 * than the text. Null where there is none among those tried.
 */
export function hostileTo(pattern: Pattern, most: number): string | null {
  const expression = new RegExp(pattern.source, pattern.flags)
  for (const { start, pump, end } of pumpsFor(pattern)) {
    const textOf = (length: number) => start + pump.repeat(Math.ceil(length / pump.length)) + end
    for (const length of LENGTHS) {
      const ms = timeOf(expression, textOf(length))
      if (ms > most && ms > 2.8 * timeOf(expression, textOf(length / 2)) && timeOf(expression, textOf(length)) > most)
        return `${JSON.stringify(start)} and ${length} of ${JSON.stringify(pump)}: ${Math.round(ms)} ms`
    }
  }
  return null
}

function timeOf(expression: RegExp, text: string): number {
  const start = cpuTime()
  text.replace(expression, '')
  return cpuTime() - start
}
