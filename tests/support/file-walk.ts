import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { listRegistered, type Need } from '@/lib/access/registry'

export interface Made {
  /** `/home/[household]/export` */
  path: string
  /** What the file calls it: `GET`, `saveStep`. */
  as: string
  /** The name in the registry. */
  name: string
  needs: Need
  call: (...args: unknown[]) => Promise<unknown>
}

/** Everything that the wrapper made in `actions.ts` or `route.ts`, each with its declared need out of the registry. */
export async function listMade(kind: 'actions.ts' | 'route.ts'): Promise<Made[]> {
  const made = await Promise.all(
    filesOf(kind).map(async (file) => {
      const module = (await import(/* @vite-ignore */ join(process.cwd(), 'app', file))) as Record<string, unknown>
      const text = readFileSync(join('app', file), 'utf8')
      return Object.entries(module).flatMap(([as, call]) => {
        if (typeof call !== 'function') return []
        const name = new RegExp(`^export const ${as} = \\w+(?:<.*>)?\\(\\{\\s*name: '([^']+)'`, 'm').exec(text)?.[1]
        const entry = listRegistered().find(
          (each) => each.name === name && (each.kind === 'action') === (kind === 'actions.ts'),
        )
        if (!name || !entry)
          throw new Error(`${file}: ${as} is not in the registry under a name that stands first in it`)
        return [{ path: pathOf(file, kind), as, name, needs: entry.needs, call: call as Made['call'] }]
      })
    }),
  )
  return made.flat()
}

function filesOf(name: string): string[] {
  return readdirSync('app', { recursive: true, encoding: 'utf8' })
    .filter((file) => file === name || file.endsWith(`/${name}`))
    .sort()
}

function pathOf(file: string, name: string): string {
  return `/${file.slice(0, -name.length).replace(/\/$/, '')}`
}
