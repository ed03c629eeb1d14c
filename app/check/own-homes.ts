import { findViewer } from '@/lib/access/page'
import { type Home, listHomes } from '@/lib/data/households'
import { asUnavailable, DatabaseUnavailable } from '@/lib/data/unavailable'

/** The open homes of whoever is signed in; none where nobody is, or while the database does not answer. */
export async function findOwnHomes(): Promise<Home[]> {
  try {
    const viewer = await findViewer()
    return viewer
      ? (await listHomes(viewer)).filter(({ state, role }) => state === 'open' && role !== 'technician')
      : []
  } catch (error) {
    if (asUnavailable(error) instanceof DatabaseUnavailable) return []
    throw error
  }
}
