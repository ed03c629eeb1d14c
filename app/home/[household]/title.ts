import type { Metadata } from 'next'
import type { Household } from '@/lib/core/household'
import { homeInWords } from '@/lib/core/subject-words'
import { asUnavailable, DatabaseUnavailable } from '@/lib/data/unavailable'
import { findHome } from './load'

/**
 * The title of a page of a home, “Year, Larkspur Court 2”: whoever has several open hears and sees them apart. What
 * cannot be asked or may not be seen is left out of it; the page itself says why.
 */
export function homeTitle<P extends { household: string }>(
  say: string,
  about: (home: Household, params: P) => string = () => say,
): (props: { params: Promise<P> }) => Promise<Metadata> {
  return async ({ params }) => {
    const asked = await params
    const home = await homeOf(asked.household)
    return { title: home ? `${about(home, asked)}, ${homeInWords(home)}` : say }
  }
}

async function homeOf(id: string): Promise<Household | undefined> {
  try {
    return (await findHome(id)).stored?.household
  } catch (error) {
    if (asUnavailable(error) instanceof DatabaseUnavailable) return undefined
    throw error
  }
}
