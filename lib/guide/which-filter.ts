import type { Light } from '@/lib/core/household'
import type { GuideFilter, GuidePlace } from './place'

/** What an answer of the filter check says about the light through the filter that was there. */
const LIGHT: Record<string, Light> = { clean: 'clear', dark: 'dark', changed: 'dark' }

/** The light that an answer of the filter check stands for, or null: the filter was not seen. */
export function lightOfAnswer(answer: string): Light | null {
  return LIGHT[answer] ?? null
}

/** "All of them, and they were alike", in place of one filter's id. */
export const ALL_FILTERS = 'all'

/** The filters that a check may have been about: those of the system that has the trouble. */
export function candidateFilters({ home, systemId }: Pick<GuidePlace, 'home' | 'systemId'>): GuideFilter[] {
  return (home?.filters ?? []).filter(({ system }) => systemId === null || system === systemId)
}

/** The filters that an answer was about: the only one, or those that were named. None where nobody can tell. */
export function meantFilters(place: Pick<GuidePlace, 'home' | 'systemId'>, named: string | null): GuideFilter[] {
  const candidates = candidateFilters(place)
  if (candidates.length <= 1 || named === ALL_FILTERS) return candidates
  return candidates.filter(({ id }) => id === named)
}
