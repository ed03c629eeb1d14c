import Link from 'next/link'
import type { HomesPage, HomesQuery } from '@/lib/core/home-list'
import { STATES, type State } from '@/lib/core/plan-types'
import { stateInWords } from '@/lib/core/words'
import { homesAddress } from '@/lib/forms/homes-query'

const SORTS = {
  building: 'By building',
  pressing: 'What presses most first',
  name: 'By name',
} as const

/** Search, state and order of the list: all of it in the address, so that it can be kept and sent, without scripts. */
export function FindForm({
  query,
  counts,
  total,
}: { query: HomesQuery } & Pick<HomesPage<unknown>, 'counts' | 'total'>) {
  return (
    <search className="find-homes no-print">
      <form action="/homes" className="inline">
        {query.building !== undefined && <input type="hidden" name="building" value={query.building} />}
        {query.state !== undefined && <input type="hidden" name="state" value={query.state} />}
        <div>
          <label className="label" htmlFor="q">
            Search homes and buildings
          </label>
          <input id="q" name="q" type="search" defaultValue={query.search} maxLength={200} />
        </div>
        <div>
          <label className="label" htmlFor="sort">
            Order
          </label>
          <select id="sort" name="sort" defaultValue={query.sort}>
            {Object.entries(SORTS).map(([sort, words]) => (
              <option key={sort} value={sort}>
                {words}
              </option>
            ))}
          </select>
        </div>
        <button type="submit">Show</button>
      </form>
      <nav aria-label="How they stand">
        <ul className="state-choice">
          <li>
            <StateLink query={query} state={undefined}>
              All: {total}
            </StateLink>
          </li>
          {STATES.filter((state) => state !== 'later').map((state) => (
            <li key={state}>
              <StateLink query={query} state={state}>
                {stateInWords(state)}: {counts[state]}
              </StateLink>
            </li>
          ))}
        </ul>
      </nav>
    </search>
  )
}

interface StateLinkProps {
  query: HomesQuery
  state: State | undefined
  children: React.ReactNode
}

function StateLink({ query: { state: _, ...query }, state, children, ...rest }: StateLinkProps) {
  return (
    <Link
      {...rest}
      href={homesAddress({ ...query, ...(state !== undefined && { state }), page: 1 })}
      aria-current={_ === state ? 'true' : undefined}
      prefetch={false}
    >
      {children}
    </Link>
  )
}
