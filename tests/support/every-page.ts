import type { There, Who } from './everybody-there'
import { type Place, places } from './page-places'
import { pageRoutes } from './routes'

/** A page as somebody comes to it. */
export interface Shown extends Place {
  route: string
  who: Who
}

/** Every page with every address that it is looked at by. Throws where a page of the app has none, or is gone. */
export function everyPage(there: There, routes: readonly string[] = pageRoutes()): Shown[] {
  const table = places(there)
  const missing = routes.filter((route) => !table[route])
  if (missing.length > 0) throw new Error(`no address in tests/support/page-places.ts for ${missing.join(', ')}`)
  const gone = Object.keys(table).filter((route) => !routes.includes(route))
  if (gone.length > 0) throw new Error(`tests/support/page-places.ts has what is no page: ${gone.join(', ')}`)
  return Object.entries(table).flatMap(([route, by]) =>
    Object.entries(by).flatMap(([who, said]) =>
      said.map((each) => ({ route, who: who as Who, ...(typeof each === 'string' ? { path: each } : each) })),
    ),
  )
}
