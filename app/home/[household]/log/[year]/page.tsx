import Link from 'next/link'
import { notFound } from 'next/navigation'
import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { now } from '@/app/now'
import { TableBox } from '@/app/parts/table-box'
import { dateInWords, dayInWords } from '@/lib/core/day-words'
import { mediumInWords, placeInWords, sizeInWords } from '@/lib/core/filter-words'
import { detailsInWords, doorInWords, recordInWords, subjectOfRecord } from '@/lib/core/log-words'
import { coolSourceInWords, sourceInWords } from '@/lib/core/source-words'
import { homeInWords, subjectInWords } from '@/lib/core/subject-words'
import { localDay } from '@/lib/core/zone'
import type { StoredHousehold } from '@/lib/data/households'
import { type LogEntry, listLog } from '@/lib/data/log'
import { listPauses, type PauseLine } from '@/lib/data/pauses'
import { HomeNav } from '../../home-nav'
import { loadHome } from '../../load'

type Props = { params: Promise<{ household: string; year: string }> }

export const generateMetadata = homeTitle(
  'Maintenance record',
  (_home, { year }: { household: string; year: string }) => `Maintenance record of ${year}`,
)

async function Page({ params }: Props) {
  const { household: id, year } = await params
  const { viewer, stored, on } = await loadHome(id, `/home/${id}/log/${year}`)
  if (!/^(19|20)\d\d$/.test(year)) notFound()
  const filter = { from: `${year}-01-01`, to: `${year}-12-31`, standingOnly: true }
  const entries = (await listLog(viewer, id, filter)).reverse()
  const aways = awaysIn(await listPauses(viewer, id, await now()), year)
  return (
    <>
      <HomeNav id={id} home={stored.household} current="Log" />
      <main id="main" tabIndex={-1}>
        <h1>Maintenance record {year}</h1>
        <p className="lead">
          {homeInWords(stored.household)}. Printed on {dayInWords(on)}.
        </p>
        <Equipment stored={stored} />
        <h2>What was done</h2>
        {entries.length === 0 ? <p>Nothing is recorded for {year}.</p> : <Done stored={stored} entries={entries} />}
        {aways.length > 0 && <Aways aways={aways} />}
        <p className="hint">
          Each line was written into Plenum by the person named in it; lines that were taken back or corrected are left
          out here and stay in the log. This record says what people wrote down. It is no report by a technician: keep
          their reports and invoices with it.
        </p>
        <p className="no-print">
          To print it, use your browser’s own print command. <Link href={`/home/${id}/log`}>Back to the log</Link>
        </p>
      </main>
    </>
  )
}

/** When nobody was at home in a year, in order: of what was said about one leaving, the latest that nobody took back. */
function awaysIn(pauses: PauseLine[], year: string): PauseLine[] {
  const byStart = new Map<string, PauseLine>()
  for (const pause of pauses) {
    const { kind, from, until, ended } = pause
    if (kind !== 'away' || from.slice(0, 4) > year || until.slice(0, 4) < year) continue
    const later = byStart.get(from)
    if (!later || (later.ended && !ended)) byStart.set(from, pause)
  }
  return [...byStart.values()].filter(({ from, ended }) => ended?.at.slice(0, 10) !== from).reverse()
}

// It tells why nothing was done for so long.
function Aways({ aways }: { aways: PauseLine[] }) {
  return (
    <>
      <h2>When nobody was at home</h2>
      <ul>
        {aways.map(({ id, from, until, by, ended }) => (
          <li key={id}>
            From {dateInWords(from)}, back on {dateInWords(ended ? ended.at.slice(0, 10) : until)}; said by {by.name}
          </li>
        ))}
      </ul>
    </>
  )
}

function Equipment({ stored: { household } }: { stored: StoredHousehold }) {
  const { systems, filters } = household
  if (systems.length === 0 && filters.length === 0) return null
  return (
    <>
      <h2>The equipment, as described now</h2>
      <ul>
        {systems.map(({ id, name, heat, cool }) => (
          <li key={id}>
            {name}:{' '}
            {[
              heat && [`heat from ${sourceInWords(heat.source)}`, heat.installed && `installed ${heat.installed}`],
              cool && [`cooling by ${coolSourceInWords(cool.source)}`, cool.installed && `installed ${cool.installed}`],
            ]
              .flat()
              .filter(Boolean)
              .join(', ')}
          </li>
        ))}
        {filters.map(({ id, place, nominal, medium, merv }) => (
          <li key={id}>
            Filter {placeInWords(place)}: {sizeInWords(nominal)}, {mediumInWords(medium, merv)}
          </li>
        ))}
      </ul>
    </>
  )
}

function Done({ stored, entries }: { stored: StoredHousehold; entries: LogEntry[] }) {
  return (
    <TableBox name="What was done">
      <table className="log-table">
        <caption className="visually-hidden">What was done</caption>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">What</th>
            <th scope="col">Recorded</th>
          </tr>
        </thead>
        <tbody>
          {entries.map(({ id, record, by, at, door }) => (
            <tr key={id}>
              <th scope="row">{dateInWords(record.on)}</th>
              <td>
                {[
                  recordInWords(record),
                  subjectInWords(stored.household, subjectOfRecord(record)),
                  ...detailsInWords(record),
                ].join(', ')}
              </td>
              <td>
                {by.name}, {dateInWords(localDay(at, stored.timeZone))}, {doorInWords(door)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  )
}

export default databasePage(Page)
