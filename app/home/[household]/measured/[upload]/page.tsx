import Link from 'next/link'
import { redirect } from 'next/navigation'
import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { PlanChangeList } from '@/app/parts/plan-change-list'
import { readingInWords } from '@/lib/core/reading-words'
import { may } from '@/lib/core/viewer'
import { listReadings } from '@/lib/data/readings'
import { findSpooled } from '@/lib/data/spool'
import { parseChoices } from '@/lib/forms/thermostat/choices'
import { HomeNav } from '../../home-nav'
import { loadHome } from '../../load'
import { ChoicesForm } from './choices-form'
import { KeepForm } from './keep-form'
import { type Brought, readBrought } from './read-brought'
import { Totals } from './totals'

interface Props {
  params: Promise<{ household: string; upload: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

export const generateMetadata = homeTitle('What is in the report')
const MOST_FAULTS = 12

/** What a thermostat's export was understood to say; its address holds how it is read. */
export default databasePage(async ({ params, searchParams }: Props) => {
  const { household: id, upload } = await params
  const { viewer, stored, on } = await loadHome(id, `/home/${id}/measured`)
  const file = await findSpooled(id, upload)
  if (!file || !may(stored.role, 'manage') || stored.state !== 'open') redirect(`/home/${id}/measured?fault=gone`)
  const sent = Object.entries(await searchParams).map(([name, value]) => [name, String(value)] as const)
  const choices = parseChoices(new Map(sent))
  const standing = await listReadings(viewer, id)
  const read = await readBrought(file, choices, { home: stored.household, standing, on })
  return (
    <>
      <HomeNav id={id} home={stored.household} current="Details" />
      <main id="main" tabIndex={-1}>
        <p className="place">
          <Link href={`/home/${id}/measured`}>Measured hours</Link>
        </p>
        <h1>What is in the report</h1>
        {read.ok ? (
          <Shown id={id} upload={upload} brought={read.value} sent={sent} home={stored.household} choices={choices} />
        ) : (
          <>
            <p className="fault" role="alert">
              {read.say}
            </p>
            <p>Nothing was kept.</p>
            <p className="buttons">
              <Link className="button" href={`/home/${id}/measured`}>
                Choose another file
              </Link>
            </p>
          </>
        )}
      </main>
    </>
  )
})

interface ShownProps {
  id: string
  upload: string
  brought: Brought
  sent: (readonly [string, string])[]
  home: Parameters<typeof ChoicesForm>[0]['home']
  choices: Parameters<typeof ChoicesForm>[0]['choices']
}

function Shown({ id, upload, brought, sent, home, choices }: ShownProps) {
  const { faults, notes, effect } = brought
  const more = faults.length - MOST_FAULTS
  return (
    <>
      {faults.length > 0 && (
        <section className="notice" role="alert" aria-labelledby="wrong">
          <h2 id="wrong">
            {faults.length === 1 ? 'One thing is wrong' : 'Some things are wrong'}: nothing is kept yet
          </h2>
          <ul>
            {faults.slice(0, MOST_FAULTS).map((say) => (
              <li key={say}>{say}</li>
            ))}
          </ul>
          {more > 0 && <p>And {more} more.</p>}
        </section>
      )}
      <Totals brought={brought} />
      {notes.length > 0 && (
        <section aria-labelledby="notes">
          <h2 id="notes">Worth knowing</h2>
          <ul>
            {notes.map((say) => (
              <li key={say}>{say}</li>
            ))}
          </ul>
        </section>
      )}
      {effect && faults.length === 0 && (
        <section aria-labelledby="effect">
          <h2 id="effect">{effect.changes.length === 0 ? 'No date moves' : 'What it does to the dates'}</h2>
          <PlanChangeList changes={effect.changes} />
          <Replaced brought={brought} home={home} />
          <KeepForm household={id} upload={upload} sent={sent} />
        </section>
      )}
      <ChoicesForm id={id} upload={upload} brought={brought} home={home} choices={choices} />
    </>
  )
}

/** Readings that give way to this file. */
function Replaced({ brought: { effect }, home }: Pick<ShownProps, 'brought' | 'home'>) {
  if (!effect || effect.replacement.gone.length === 0) return null
  const { gone, rest } = effect.replacement
  return (
    <>
      <p>What the thermostat said of these days before gives way to this file, and comes back if you take it back:</p>
      <ul>
        {gone.map(({ id, reading }) => (
          <li key={id}>{readingInWords(home, reading)}</li>
        ))}
      </ul>
      {rest.length > 0 && (
        <>
          <p>Of these there stay, by their share of the days:</p>
          <ul>
            {rest.map((reading) => (
              <li key={`${reading.from} ${reading.to}`}>{readingInWords(home, reading)}</li>
            ))}
          </ul>
        </>
      )}
    </>
  )
}
