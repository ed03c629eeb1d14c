import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { ROOT } from '@/lib/cli/root.mjs'

/** Every page of the app by its route, `/home/[household]/year`, read from the folders: a new page is in it by itself. */
export function pageRoutes(): string[] {
  const files = readdirSync(join(ROOT, 'app'), { recursive: true, encoding: 'utf8' })
  return files
    .filter((file) => /(^|[\\/])page\.tsx$/.test(file))
    .map((file) => `/${file.split(/[\\/]/).slice(0, -1).join('/')}`)
    .sort()
}
