import type { Metadata } from 'next'
import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { HomesNav } from '@/app/homes-nav'
import type { PageProps } from '@/app/page-props'
import { stations } from '@/content/stations'
import { zones } from '@/content/zones'
import { requireViewer } from '@/lib/access/page'
import { plural } from '@/lib/core/day-words'
import { SHEET_COLUMNS } from '@/lib/core/unit-sheet'
import { listHomes } from '@/lib/data/households'
import { ImportForm } from './import-form'

export const metadata: Metadata = { title: 'Units by spreadsheet' }

export default databasePage(async ({ searchParams }: PageProps) => {
  const viewer = await requireViewer('/homes/import')
  const { fresh, changed, same } = await searchParams
  const homes = (await listHomes(viewer)).filter(({ state }) => state === 'open')
  const alone = homes.filter(({ building }) => building === null).length
  const counts = [fresh, changed, same].map(Number)
  return (
    <>
      <HomesNav current="Homes" />
      <main id="main" tabIndex={-1}>
        <h1>Units by spreadsheet</h1>
        {fresh !== undefined && counts.every(Number.isInteger) && (
          <div className="notice" role="status">
            <p>
              Kept: {plural(counts[0] ?? 0, 'new unit')}, {counts[1]} changed, {counts[2]} as they were.
            </p>
            <p>
              <Link href="/homes">See Homes</Link> or <Link href="/rounds">plan the rounds</Link>.
            </p>
          </div>
        )}
        <ImportForm
          columns={[...SHEET_COLUMNS]}
          stations={stations.map(({ id, name }) => [id, name])}
          zones={zones.map(({ zone, name }) => [String(zone), `Zone ${zone}, ${name}`])}
          timeZone={homes[0]?.timeZone ?? ''}
        >
          <Take homes={homes.length} alone={alone} />
        </ImportForm>
      </main>
    </>
  )
})

/** The way out: the same columns with what is known now. */
function Take({ homes, alone }: { homes: number; alone: number }) {
  return (
    <section aria-labelledby="take">
      <h2 id="take">Take your units along</h2>
      <p>
        <a className="button" href="/homes/export.csv" download>
          Units as a CSV file
        </a>
      </p>
      <p>
        {homes === 0
          ? 'It holds only the headings until there are units: fill it in, and bring it back here.'
          : 'Change what you like in it and bring it back here: what you did not change stays as it is.'}
        {alone > 0 &&
          ` ${plural(alone, 'home')} that ${alone === 1 ? 'stands' : 'stand'} in no building ${alone === 1 ? 'is' : 'are'} not in it.`}
      </p>
    </section>
  )
}
