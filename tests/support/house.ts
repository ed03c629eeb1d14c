import { posix } from 'node:path'

/** One source file; `path` from the top of the repository, with `/`. */
export interface SourceFile {
  path: string
  text: string
}

interface Room {
  /** Where the room lies: a folder with its `/`, or one file. The first room that fits a file is its room. */
  at: string[]
  /** Rooms of ours that it may import, besides itself. */
  rooms: string[]
  /** Packages that it may import; `*` all but those that belong to one room alone. */
  packages: string[]
  /** Reads no clock, no network, no disk, no chance, no surroundings. */
  pure?: boolean
  /** May import nothing but types from other rooms. */
  typesOnly?: boolean
}

const DATES = ['date-fns']
const NODE = ['node:', 'server-only']
const BELOW_ACCESS = ['lib/core', 'lib/guide', 'lib/forms', 'lib/data']

/** The import table of the house, as DEVELOPERS.md shows it. */
export const ROOMS: Record<string, Room> = {
  'lib/core': { at: ['lib/core/'], rooms: [], packages: DATES, pure: true },
  'lib/guide': { at: ['lib/guide/'], rooms: ['lib/core'], packages: [], pure: true },
  content: {
    at: ['content/'],
    rooms: ['lib/core', 'lib/guide'],
    packages: [],
    pure: true,
    typesOnly: true,
  },
  'lib/forms': {
    at: ['lib/forms/'],
    rooms: ['lib/core', 'lib/guide'],
    packages: ['zod', 'zod-openapi', 'csv-parse', 'chardet', 'iconv-lite', 'fflate'],
  },
  'lib/data': {
    at: ['lib/data/'],
    rooms: ['lib/core', 'lib/guide', 'lib/forms', 'prisma'],
    packages: [...NODE, '@prisma/', 'better-sqlite3', 'pg', 'sharp'],
  },
  // Its wrappers stand around actions and pages, which Next hands the request by functions of its own.
  'lib/access': {
    at: ['lib/access/'],
    rooms: [...BELOW_ACCESS, 'lib/clock'],
    packages: [...NODE, 'better-auth', 'next'],
  },
  'lib/outbound': {
    at: ['lib/outbound/'],
    rooms: [...BELOW_ACCESS, 'lib/access', 'lib/clock'],
    packages: [...NODE, 'ical-generator', 'nodemailer', 'web-push', 'qrcode'],
  },
  'lib/clock': { at: ['lib/clock.ts'], rooms: [], packages: [] },
  'lib/cli': {
    at: ['lib/cli/'],
    rooms: [...BELOW_ACCESS, 'lib/access', 'lib/outbound', 'lib/clock', 'content'],
    packages: ['*'],
  },
  'app/parts': {
    at: ['app/parts/'],
    rooms: ['lib/core', 'lib/guide', 'content'],
    packages: ['react', 'next', 'd3-scale', 'd3-shape', 'server-only'],
  },
  app: {
    at: ['app/', 'instrumentation.ts', 'proxy.ts'],
    rooms: [...BELOW_ACCESS, 'lib/access', 'lib/outbound', 'lib/clock', 'content', 'app/parts'],
    packages: ['*'],
  },
  prisma: { at: ['prisma/'], rooms: [...BELOW_ACCESS, 'content', 'lib/clock'], packages: ['*', '@prisma/'] },
}

// A package of one room is the wall around it: who could import zod could parse anywhere.
const OWNED = [...DATES, 'zod', '@prisma/', 'better-sqlite3', 'pg', 'better-auth', 'csv-parse']

const IMPURE: [RegExp, string][] = [
  [/\bDate\.now\b|\bnew Date\(\s*\)|\bDate\(\)|\bperformance\.now\b/, 'reads the clock'],
  [/\bMath\.random\b|\bcrypto\b/, 'draws by chance'],
  [/\bfetch\s*\(|\bXMLHttpRequest\b/, 'reads the network'],
  [/\bprocess\.|\bglobalThis\b/, 'reads its surroundings'],
]

interface Import {
  from: string
  typeOnly: boolean
}

/** All imports of a file: `import`, `export … from`, `import()`, `require()`. Comments are not read. */
export function listImports(text: string): Import[] {
  const code = withoutComments(text)
  const statements = code.matchAll(/(?:^|[;\n])\s*(import|export)\s+(type\s)?([^'"`;]*?\sfrom\s*)?['"]([^'"]+)['"]/g)
  const calls = code.matchAll(/\b(?:import|require)\s*\(\s*['"`]([^'"`]+)['"`]/g)
  return [
    ...[...statements].map((found) => ({ from: found[4] as string, typeOnly: found[2] !== undefined })),
    ...[...calls].map((found) => ({ from: found[1] as string, typeOnly: false })),
  ]
}

// Strings are matched first, so that `//` in an address is not taken for a comment.
function withoutComments(text: string): string {
  return text.replace(/'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|\/\*[\s\S]*?\*\/|\/\/.*$/gm, (found) =>
    found.startsWith('/') ? ' ' : found,
  )
}

function roomOf(path: string): string | undefined {
  const fits = (at: string) =>
    at.endsWith('/') ? path.startsWith(at) : path.replace(/\.tsx?$/, '') === at.replace(/\.ts$/, '')
  return Object.keys(ROOMS).find((name) => ROOMS[name]?.at.some(fits))
}

function matches(from: string, names: string[]): boolean {
  return names.some((name) =>
    /[:/]$/.test(name) ? from.startsWith(name) : from === name || from.startsWith(`${name}/`),
  )
}

function importFault(file: SourceFile, room: string, { from, typeOnly }: Import): string | undefined {
  const { rooms, packages, typesOnly } = ROOMS[room] as Room
  const plainScript = file.path.endsWith('.mjs') // runs without a compiler, so it names its files in full
  if (/^[@.]\/.*\.(ts|tsx|js|jsx)$/.test(from)) return `imports ${from} with its file extension`
  const relative = from.startsWith('.')
  const target = from.startsWith('@/') ? from.slice(2) : relative && posix.join(posix.dirname(file.path), from)
  if (target) {
    const other = roomOf(target)
    if (other === room || plainScript || /\.css$/.test(target)) return undefined
    if (!other || !rooms.includes(other)) return `imports ${from}`
    if (relative) return `imports ${from}: another room is written @/…`
    // A sample household counts its days from today; that is all a table ever runs.
    return typesOnly && !typeOnly && target !== 'lib/core/day' ? `imports more than types from ${from}` : undefined
  }
  if (matches(from, DATES) && file.path !== 'lib/core/day.ts')
    return `imports ${from}: days are counted in lib/core/day.ts`
  if (matches(from, packages)) return undefined
  return packages.includes('*') && !matches(from, OWNED) ? undefined : `imports ${from}`
}

/** Every breach of the import table, `lib/core/a.ts imports zod`; files outside the rooms are not judged. */
export function houseFaults(files: SourceFile[]): string[] {
  return files.flatMap((file) => {
    const room = roomOf(file.path)
    if (!room) return []
    const faults = listImports(file.text).map((found) => importFault(file, room, found))
    const code = withoutComments(file.text)
    if (ROOMS[room]?.pure) faults.push(...IMPURE.map(([pattern, what]) => (pattern.test(code) ? what : undefined)))
    return faults.filter((fault) => fault !== undefined).map((fault) => `${file.path} ${fault}`)
  })
}
