import { mkdtempSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { build } from 'esbuild'

/**
 * A module of the bench, bundled as the app is: tsx keeps the name of every inner function, a call each time one is
 * made, which the built app does not do, and which counts where microseconds are measured.
 */
export async function bundled<M>(name: string): Promise<M> {
  const folder = mkdtempSync(join(import.meta.dirname, '..', '..', 'node_modules', '.bench-'))
  try {
    const outfile = join(folder, `${name}.mjs`)
    await build({
      entryPoints: [join(import.meta.dirname, `${name}.ts`)],
      ...{ outfile, bundle: true, platform: 'node', format: 'esm', external: ['rrule'] },
      ...{ conditions: ['react-server'], tsconfig: 'tsconfig.json' },
    })
    return await import(pathToFileURL(outfile).href)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
