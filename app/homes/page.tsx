import type { Metadata } from 'next'
import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { FourDoors } from '@/app/four-doors'
import { KeptList } from '@/app/homes/record/kept-list'
import { HomesNav } from '@/app/homes-nav'
import type { PageProps } from '@/app/page-props'
import { OfWhat } from '@/app/parts/of-what'
import { listUnits, type Unit } from '@/app/units'
import { requireViewer } from '@/lib/access/page'
import { plural } from '@/lib/core/day-words'
import { type HomesPage, type HomesQuery, pageOfHomes } from '@/lib/core/home-list'
import { homesAddress, parseHomesQuery } from '@/lib/forms/homes-query'
import { FindForm } from './find-form'
import { HomeRow } from './home-row'

export const metadata: Metadata = { title: 'Homes' }

export default databasePage(async ({ searchParams }: PageProps) => {
  const query = parseHomesQuery(await searchParams)
  const viewer = await requireViewer(homesAddress(query))
  const units = (await listUnits(viewer)).map(({ plan }) => plan)
  const shown = pageOfHomes(units, query)
  return (
    <>
      {units.length > 1 && <HomesNav current="Homes" />}
      <main id="main" tabIndex={-1}>
        <h1>{query.building ?? 'Homes'}</h1>
        <KeptList account={viewer.accountId} />
        {units.length === 0 && <p className="lead">None yet. Describe your home, and its dates are here.</p>}
        {units.length > 1 && <Summary query={query} shown={shown} all={units.length} />}
        {units.length > 1 && <FindForm query={query} counts={shown.counts} total={shown.total} />}
        <HomeList query={query} shown={shown} />
        <Pages query={query} shown={shown} />
        <h2>{units.length === 0 ? 'Where to begin' : 'And also'}</h2>
        {units.length > 1 && (
          <p>
            <Link href="/homes/people" prefetch={false}>
              People of your homes
            </Link>
            : managers and technicians.
          </p>
        )}
        {units.length > 1 && (
          <p>
            <Link href="/homes/learning" prefetch={false}>
              Learning
            </Link>
            : what looks at some filters tell of homes where nobody has looked.
          </p>
        )}
        <p>
          <Link href="/homes/import" prefetch={false}>
            Units by spreadsheet
          </Link>
          : many homes brought in, or taken along, as one table.
        </p>
        <FourDoors signedIn />
      </main>
    </>
  )
})

interface Shown {
  query: HomesQuery
  shown: HomesPage<Unit>
}

function Summary({ query, shown, all }: Shown & { all: number }) {
  const asked = query.search !== undefined || query.state !== undefined
  if (shown.found === 0) {
    return (
      <p className="lead">
        {query.building !== undefined && shown.total === 0 && !asked
          ? `No home of yours stands in a building of this name.`
          : 'No home of yours fits this.'}{' '}
        <Link href="/homes">Show all {all}</Link>
      </p>
    )
  }
  return (
    <p className="lead">
      {plural(shown.found, 'home')}
      {shown.pages > 1 && `, page ${shown.page} of ${shown.pages}`}.{' '}
      {(asked || query.building !== undefined) && <Link href="/homes">Show all {all}</Link>}
    </p>
  )
}

/** The homes of the page, under their buildings where they come in that order. */
function HomeList({ query, shown }: Shown) {
  if (query.sort !== 'building') {
    return (
      <ul className="home-list">
        {shown.homes.map((unit) => (
          <HomeRow key={unit.id} unit={unit} withBuilding />
        ))}
      </ul>
    )
  }
  const buildings = [...new Set(shown.homes.map(({ building }) => building))]
  const alone = buildings.length === 1 && buildings[0] === null
  return buildings.map((building, i) => (
    <section key={building ?? ''} aria-labelledby={alone ? undefined : `building-${i}`}>
      {!alone && <h2 id={`building-${i}`}>{building ?? 'In no building'}</h2>}
      {building !== null && (
        <p className="building-links no-print">
          {query.building === undefined && (
            <Link href={homesAddress({ building, sort: 'building', page: 1 })} prefetch={false}>
              Only this building
              <OfWhat>{building}</OfWhat>
            </Link>
          )}
          <Link href={`/homes/record?${new URLSearchParams({ building })}`} prefetch={false}>
            Record for all of it
            <OfWhat>{building}</OfWhat>
          </Link>
          <Link href={`/rounds?${new URLSearchParams({ building })}`} prefetch={false}>
            Its rounds
            <OfWhat>{building}</OfWhat>
          </Link>
        </p>
      )}
      <ul className="home-list">
        {shown.homes
          .filter((unit) => unit.building === building)
          .map((unit) => (
            <HomeRow key={unit.id} unit={unit} withBuilding={false} />
          ))}
      </ul>
    </section>
  ))
}

function Pages({ query, shown: { page, pages } }: Shown) {
  if (pages === 1) return null
  const to = (number: number) => homesAddress({ ...query, page: number })
  return (
    <nav className="pages no-print" aria-label="Pages">
      {page > 1 && (
        <Link className="button" href={to(page - 1)} rel="prev" prefetch={false}>
          Page {page - 1}
        </Link>
      )}
      <span>
        Page {page} of {pages}
      </span>
      {page < pages && (
        <Link className="button" href={to(page + 1)} rel="next" prefetch={false}>
          Page {page + 1}
        </Link>
      )}
    </nav>
  )
}
