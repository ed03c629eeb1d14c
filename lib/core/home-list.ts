import { type Item, STATES, type State } from './plan-types'

/** What a list of many homes knows of one: its name and the one thing there that presses most. */
export interface ListedHome {
  id: string
  name: string
  building: string | null
  state: 'open' | 'closed'
  /** Null where nothing is due, and in a closed home. */
  pressing: Item | null
  /** `searchText` of its name and building. */
  search: string
}

export const HOME_SORTS = ['building', 'pressing', 'name'] as const
export type HomeSort = (typeof HOME_SORTS)[number]

/** Which homes to show: nothing left out means all. */
export interface HomesQuery {
  search?: string
  state?: State
  building?: string
  sort: HomeSort
  /** From 1. */
  page: number
}

export interface HomesPage<H> {
  homes: H[]
  /** How many there are before the state is asked for, and how many of them stand how. */
  total: number
  counts: Record<State, number>
  /** How many the query finds, over all pages. */
  found: number
  /** The page that is shown: one past the end shows the last. */
  page: number
  pages: number
}

export const HOMES_A_PAGE = 50

/** The one item that presses most: by state, then by day. Null for none. */
export function pressingItem(items: readonly Item[]): Item | null {
  let first: Item | null = null
  for (const item of items) if (first === null || rank(item) < rank(first)) first = item
  return first
}

function rank({ state, due }: Item): string {
  return `${STATES.indexOf(state)} ${due}`
}

/** How a text is searched: case and accents do not count. `searchText('Élm Row')` is `elm row`. */
export function searchText(text: string): string {
  return text.normalize('NFKD').replaceAll(/\p{M}/gu, '').toLowerCase()
}

/** The homes of one page of a query. `homes` come by building and name; every word that is searched for must be found. */
export function pageOfHomes<H extends ListedHome>(homes: readonly H[], query: HomesQuery): HomesPage<H> {
  // Between two blanks there is an empty word, which is found everywhere.
  const words = searchText(query.search ?? '').split(/\s/)
  const among = homes.filter(
    (home) =>
      (query.building === undefined || home.building === query.building) &&
      words.every((word) => home.search.includes(word)),
  )
  const counts: Record<State, number> = { overdue: 0, due: 0, soon: 0, later: 0 }
  for (const { pressing } of among) if (pressing) counts[pressing.state]++
  const found = query.state === undefined ? among : among.filter(({ pressing }) => pressing?.state === query.state)
  const sorted = inOrder(found, query.sort)
  const pages = Math.max(1, Math.ceil(sorted.length / HOMES_A_PAGE))
  const page = Math.min(Math.max(1, query.page), pages)
  return {
    homes: sorted.slice((page - 1) * HOMES_A_PAGE, page * HOMES_A_PAGE),
    total: among.length,
    counts,
    found: sorted.length,
    page,
    pages,
  }
}

function inOrder<H extends ListedHome>(homes: H[], sort: HomeSort): H[] {
  if (sort === 'name') return homes.toSorted((a, b) => compareNames(a.name, b.name))
  if (sort === 'building') return byBuilding(homes)
  const ranked = homes.map((home) => ({ home, rank: pressingRank(home) }))
  return ranked.sort((a, b) => (a.rank < b.rank ? -1 : a.rank > b.rank ? 1 : 0)).map(({ home }) => home)
}

// Names are compared inside a building only: ten thousand compared with each other would cost more than reading them.
function byBuilding<H extends ListedHome>(homes: H[]): H[] {
  const buildings = new Map<string | null, H[]>()
  for (const home of homes) {
    const list = buildings.get(home.building)
    if (list) list.push(home)
    else buildings.set(home.building, [home])
  }
  const none = buildings.get(null) ?? []
  buildings.delete(null)
  const sorted = [...buildings].sort(([a], [b]) => compareNames(a ?? '', b ?? ''))
  return [...sorted.map(([, list]) => list), none].flatMap((list) => list.sort((a, b) => compareNames(a.name, b.name)))
}

function pressingRank({ state, pressing }: ListedHome): string {
  if (state === 'closed') return '~'
  return pressing ? rank(pressing) : '9'
}

// One collator for all: a new one for each comparison would cost more than the whole page.
const names = new Intl.Collator('en', { numeric: true, sensitivity: 'base' })

/** `Unit 9` before `Unit 10`. */
export function compareNames(a: string, b: string): number {
  return names.compare(a, b)
}
