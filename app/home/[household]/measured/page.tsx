import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { momentInWords } from '@/app/moment-in-words'
import { sentenceOf } from '@/app/sentence-of'
import { spanInWords } from '@/lib/core/day-words'
import type { Household } from '@/lib/core/household'
import { readingInWords } from '@/lib/core/reading-words'
import { subjectInWords } from '@/lib/core/subject-words'
import { may } from '@/lib/core/viewer'
import { listMeasurings, listReadings, type Measuring } from '@/lib/data/readings'
import { HomeNav } from '../home-nav'
import { LineButton } from '../line-button'
import { loadHome } from '../load'
import { takeBackMeasured, takeMeasuredOut } from './actions'
import { BRING_FAULTS } from './bring-faults'
import { BringForm } from './bring-form'
import { Did } from './did'

interface Props {
  params: Promise<{ household: string }>
  searchParams: Promise<{ did?: string | string[]; fault?: string | string[] }>
}

export const generateMetadata = homeTitle('Measured hours')

/** What was measured in a home, and the ways to bring more. */
export default databasePage(async ({ params, searchParams }: Props) => {
  const { household: id } = await params
  const { did, fault } = await searchParams
  const home = await loadHome(id, `/home/${id}/measured`)
  const { viewer, stored } = home
  const { household } = stored
  const readings = await listReadings(viewer, id)
  const measurings = await listMeasurings(viewer, id)
  const mayChange = may(stored.role, 'manage') && stored.state === 'open'
  const say = sentenceOf(BRING_FAULTS, fault)
  return (
    <>
      <HomeNav id={id} home={household} current="Details" />
      <main id="main" tabIndex={-1}>
        <p className="place">
          <Link href={`/home/${id}/details`}>Details</Link>
        </p>
        <h1>Measured hours</h1>
        <p className="lead">
          How long the equipment really ran replaces the estimate where it was measured, and sets it right everywhere
          else. So a filter is due when it is loaded, not when a rule says so.
        </p>
        <Did home={home} viewer={viewer} did={did} />
        {mayChange && (
          <>
            <section aria-labelledby="bring">
              <h2 id="bring">From the thermostat</h2>
              <p>
                Many thermostats let you download a report of when they called for heat and cooling. Bring that table as
                it is: you see first what was understood, and nothing is kept before you say so.
              </p>
              {say && (
                <p className="fault" role="alert">
                  {say}
                </p>
              )}
              <BringForm household={id} />
            </section>
            <section aria-labelledby="other">
              <h2 id="other">Without a report</h2>
              <ul>
                <li>
                  <Link href={`/home/${id}/measured/hours`}>Hours that the thermostat shows</Link>
                </li>
                <li>
                  <Link href={`/home/${id}/measured/meter`}>Readings of an hour meter</Link>
                </li>
                <li>
                  <Link href={`/home/${id}/measured/bills`}>Bills for gas, oil, propane or electric heat</Link>
                </li>
                <li>
                  <Link href={`/home/${id}/measured/happened`}>
                    Something happened: smoke, building work, a heat wave
                  </Link>
                </li>
              </ul>
            </section>
          </>
        )}
        <section aria-labelledby="standing">
          <h2 id="standing">What is measured</h2>
          <Standing home={household} id={id} readings={readings} mayChange={mayChange} />
        </section>
        {measurings.length > 0 && (
          <section aria-labelledby="brought">
            <h2 id="brought">What was brought, and taken out</h2>
            <ul className="readings">
              {measurings.slice(0, 30).map((one) => (
                <li key={one.id}>
                  {measuringInWords(household, one)}, by {one.byName}, {momentInWords(one.at, household.timeZone)}
                  {one.undone && `; taken back by ${one.undone.by}`}
                  {!one.undone && mayChange && (
                    <LineButton
                      action={takeBackMeasured}
                      fields={{ household: id, measuring: one.id }}
                      about={measuringInWords(household, one)}
                    >
                      Take it back
                    </LineButton>
                  )}
                </li>
              ))}
            </ul>
          </section>
        )}
      </main>
    </>
  )
})

const KINDS = {
  thermostat: 'A thermostat’s report',
  'hour-meter': 'Readings of an hour meter',
  bill: 'Bills',
  'taken-out': 'Taken out',
} as const

function measuringInWords(home: Household, { kind, system, from, to }: Measuring): string {
  return `${KINDS[kind]}: ${subjectInWords(home, system)}, ${spanInWords(from, to)}`
}

interface StandingProps {
  home: Household
  id: string
  readings: Awaited<ReturnType<typeof listReadings>>
  mayChange: boolean
}

function Standing({ home, id, readings, mayChange }: StandingProps) {
  const systems = new Set(home.systems.map((system) => system.id))
  const shown = readings
    .filter(({ reading }) => systems.has(reading.system))
    .toSorted((a, b) => (a.reading.from < b.reading.from ? 1 : -1))
  if (shown.length === 0) return <p>Nothing yet: the hours are estimated from the climate and the equipment.</p>
  return (
    <ul className="readings">
      {shown.map(({ id: reading, reading: one }) => (
        <li key={reading}>
          {readingInWords(home, one)}
          {mayChange && (
            <LineButton
              action={takeMeasuredOut}
              fields={{ household: id, reading }}
              about={spanInWords(one.from, one.to)}
              className="quiet"
            >
              Take it out
            </LineButton>
          )}
        </li>
      ))}
    </ul>
  )
}
