import { mkdtempSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { build } from 'esbuild'
import { benchHomes, benchRounds } from './units'

// tsx keeps the name of every inner function, a call each time one is made, which the built app does not do. What is
// measured by the microsecond is therefore bundled first, as the app is.
const folder = mkdtempSync(join(import.meta.dirname, '..', '..', 'node_modules', '.bench-'))
try {
  const outfile = join(folder, 'planning.mjs')
  await build({
    entryPoints: [join(import.meta.dirname, 'planning.ts')],
    ...{ outfile, bundle: true, platform: 'node', format: 'esm', external: ['rrule'] },
    ...{ conditions: ['react-server'], tsconfig: 'tsconfig.json' },
  })
  await import(pathToFileURL(outfile).href)
} finally {
  rmSync(folder, { recursive: true, force: true })
}
const on = '2026-11-25'
console.log(benchRounds(on))
for (const line of await benchHomes(on)) console.log(line)
await import('./outbound')
