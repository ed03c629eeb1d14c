import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

// What Next itself reads from a route file.
const SETTINGS = /^export const (dynamic|revalidate|runtime|maxDuration|fetchCache|preferredRegion) = /
const WRAPPED = {
  'actions.ts': /^export const \w+ = action(<.*>)?\($/,
  'route.ts': /^export const (GET|HEAD|POST|PUT|PATCH|DELETE) = handler\($/,
}

/** Every place under a folder where an action or a route is not made by the wrapper, as `file: line`. */
export function listUnwrapped(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file))
    .flatMap((file) => faultsOf(join(folder, file)))
}

function faultsOf(file: string): string[] {
  const text = readFileSync(file, 'utf8')
  const kind = /(?:^|\/)(actions|route)\.tsx?$/.exec(file)?.[1]
  // An action may be written anywhere with the directive; here it stands in an actions.ts or nowhere.
  const hidden = kind !== 'actions' && /^\s*['"]use server['"]/m.test(text) ? [`${file}: 'use server'`] : []
  if (!kind) return hidden
  const wrapped = WRAPPED[`${kind}.ts` as keyof typeof WRAPPED]
  const lines = text.split('\n').filter((line) => /^\s*(export|module\.exports)\b/.test(line))
  const faults = lines.filter(
    (line) => !SETTINGS.test(line) && !/^export (type|interface) /.test(line) && !wrapped.test(opening(line)),
  )
  return [...hidden, ...faults.map((line) => `${file}: ${line.trim()}`)]
}

// `export const GET = handler({ …` up to and with the first bracket.
function opening(line: string): string {
  return line.replace(/\((?:\{.*)?$/, '(')
}
