import { HOME_SORTS, type HomeSort, type HomesQuery } from '@/lib/core/home-list'
import { STATES, type State } from '@/lib/core/plan-types'

/** What stands behind the `?` of an address, as Next hands it over. */
export type SearchParams = Record<string, string | string[] | undefined>

/** The one value of a part of an address, trimmed; nothing where it is absent, empty, repeated or too long to be meant. */
export function oneOf(params: SearchParams, name: string): string | undefined {
  const value = params[name]
  const text = typeof value === 'string' ? value.trim() : ''
  return text === '' || text.length > 200 ? undefined : text
}

/** What an address asks of the list of homes. What it cannot mean is left out: the list then shows more, never an error. */
export function parseHomesQuery(params: SearchParams): HomesQuery {
  const search = oneOf(params, 'q')
  const building = oneOf(params, 'building')
  const state = STATES.find((known): known is State => known === oneOf(params, 'state'))
  const sort = HOME_SORTS.find((known): known is HomeSort => known === oneOf(params, 'sort')) ?? 'building'
  const page = Number(oneOf(params, 'page') ?? 1)
  return {
    ...(search !== undefined && { search }),
    ...(building !== undefined && { building }),
    ...(state !== undefined && { state }),
    sort,
    page: Number.isInteger(page) && page > 0 && page < 1_000_000 ? page : 1,
  }
}

/** The address of a query, `/homes?q=larkspur&state=due`: what `parseHomesQuery` reads back. */
export function homesAddress({ search, building, state, sort, page }: HomesQuery): string {
  const parts = new URLSearchParams()
  if (search !== undefined) parts.set('q', search)
  if (building !== undefined) parts.set('building', building)
  if (state !== undefined) parts.set('state', state)
  if (sort !== 'building') parts.set('sort', sort)
  if (page > 1) parts.set('page', String(page))
  const text = parts.toString()
  return text === '' ? '/homes' : `/homes?${text}`
}
