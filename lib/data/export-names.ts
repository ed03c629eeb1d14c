import type { Viewer } from '@/lib/core/viewer'
import { ask, Prisma } from './connection'
import { freeId, type Home } from './households'
import { within } from './scope'

/** A home in the order in which an export lists it, under the id that it has there. */
export interface NamedHome extends Pick<Home, 'id' | 'timeZone' | 'revision' | 'state'> {
  exportedAs: string
}

/** The homes of `exportHouseholds`, without what stands in them. */
export function listExportNames(viewer: Viewer): Promise<NamedHome[]> {
  return ask(async (db) => {
    const rows = await db.$queryRaw<(Omit<NamedHome, 'exportedAs'> & { fileId: string })[]>`
      SELECT h."id", h."fileId", h."timeZone", h."revision", h."state"
      FROM "Household" h WHERE ${within(viewer, 'see', Prisma.sql`h."id"`)} ORDER BY h."ownerId", h."position"`
    const taken = new Set<string>()
    return rows.map(({ fileId, ...home }) => {
      const exportedAs = freeId(fileId, taken)
      taken.add(exportedAs)
      return { ...home, exportedAs }
    })
  })
}
