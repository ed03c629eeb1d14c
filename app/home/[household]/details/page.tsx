import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { HomeSummary } from '@/app/describe/home-summary'
import { homeTitle } from '@/app/home/[household]/title'
import { dateInWords, plural } from '@/lib/core/day-words'
import { spanOf } from '@/lib/core/reading-spans'
import { dustEventInWords, weatherInWords } from '@/lib/core/reading-words'
import { may } from '@/lib/core/viewer'
import { assumedInWords } from '@/lib/core/warnings'
import { emergencyNumber } from '@/lib/guide/place'
import { HomeNav } from '../home-nav'
import { loadHome } from '../load'
import { WhatHappenedLinks } from '../what-happened/links'

interface PageProps {
  params: Promise<{ household: string }>
  searchParams: Promise<{ saved?: string | string[] }>
}

export const generateMetadata = homeTitle('Details')

/** Everything that is known of a home, each part with the way to change it. */
export default databasePage(async ({ params, searchParams }: PageProps) => {
  const { household: id } = await params
  const { saved } = await searchParams
  const { stored } = await loadHome(id, `/home/${id}/details`)
  const { household: home, contacts, accessNote } = stored
  const details = `/home/${id}/details`
  const times = [
    ...home.dustEvents.map(dustEventInWords),
    ...(home.weather ?? []).map((spell) => weatherInWords(spell, home.units)),
  ]
  const mayChange = may(stored.role, 'manage') && stored.state === 'open'
  const assumed = (home.assumed ?? []).map((one) => assumedInWords(home, one)).filter((say) => say !== null)
  return (
    <>
      <HomeNav id={id} home={home} current="Details" />
      <main id="main" tabIndex={-1}>
        <h1>Details</h1>
        <p className="lead">What the dates are reckoned from. Before a change is saved you see what it does to them.</p>
        {saved && (
          <p className="notice" role="status">
            Saved. <Link href={`/home/${id}`}>What is due</Link> is reckoned anew.
          </p>
        )}
        <HomeSummary home={home} hrefOf={(part) => `${details}/${part}`} readOnly={!mayChange} />
        {mayChange && (
          <p className="buttons">
            <Link className="button" href={`${details}/systems/new`}>
              Add a system
            </Link>
            {home.systems.length > 0 && (
              <Link className="button" href={`${details}/filters/new`}>
                Add a filter
              </Link>
            )}
          </p>
        )}
        {assumed.length > 0 && (
          <>
            <h2>Assumed, because nobody knew</h2>
            <ul>
              {assumed.map((say) => (
                <li key={say}>{say}</li>
              ))}
            </ul>
          </>
        )}

        <h2>Dusty, hot and cold times</h2>
        {times.length === 0 && <p>None. Building work, wildfire smoke, pollen and a heat wave fill a filter sooner.</p>}
        <ul>
          {times.map((say) => (
            <li key={say}>{say}</li>
          ))}
        </ul>
        {mayChange && (
          <p>
            <Link href={`/home/${id}/measured/happened`}>Something happened: smoke, building work, a heat wave</Link>
          </p>
        )}

        <h2>Measured hours and bills</h2>
        <p>They replace the estimate where they were measured, and set it right everywhere else.</p>
        <WhatHappenedLinks id={id} household={home} />
        <p>
          {home.readings.length === 0
            ? 'Nothing yet: the hours are estimated from the climate and the equipment. '
            : `${plural(home.readings.length, 'reading')}, the last up to ${dateInWords(spanOf(home.readings).to)}. `}
          <Link href={`/home/${id}/measured`}>Measured hours: a thermostat, an hour meter, bills</Link>
        </p>

        <h2>Who is in this home here</h2>
        <p>
          <Link href={`/home/${id}/people`}>People, handing over, closing</Link>
        </p>

        <h2>Whom to call, and notes</h2>
        <ul>
          {contacts.map(({ id: contact, kind, name, phone, email, note }) => (
            <li key={contact}>
              {KINDS[kind]}: {[name, phone, email, note].filter(Boolean).join(', ')}
            </li>
          ))}
          <li>Emergency number: {emergencyNumber({ home })}</li>
          {accessNote && <li>How to get in: {accessNote}</li>}
        </ul>
        {mayChange && (
          <p>
            <Link href={`${details}/contacts`}>Change whom to call and the notes</Link>
          </p>
        )}

        <h2>Renters and photos</h2>
        <ul>
          <li>
            <Link href={`/home/${id}/renters`}>Links for renters, and what they wrote</Link>
          </li>
          <li>
            <Link href={`/home/${id}/photos`}>Photos</Link>
          </li>
          <li>
            <a href={`/home/${id}/archive`}>All of this home and its photos as one archive</a>
          </li>
        </ul>
      </main>
    </>
  )
})

const KINDS = {
  technician: 'Technician',
  landlord: 'Landlord',
  'gas-company': 'Gas company',
  other: 'Somebody else',
} as const
