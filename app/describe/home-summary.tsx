import Link from 'next/link'
import { tables } from '@/content/tables'
import { climateFollows, climateFollowsInWords } from '@/lib/core/climate-follows'
import { dateInWords } from '@/lib/core/day-words'
import { mediumInWords, placeName, sizeInWords } from '@/lib/core/filter-words'
import type { Household, System } from '@/lib/core/household'
import { coolSourceInWords, sourceInWords } from '@/lib/core/source-words'
import { subjectInWords } from '@/lib/core/subject-words'
import { numberInWords, temperatureInWords } from '@/lib/core/unit-words'
import { peopleInWords } from '@/lib/core/words'

interface HomeSummaryProps {
  home: Household
  /** Where a part is changed: `climate`, `people`, `systems/main`, `filters/hall`, `devices`. */
  hrefOf: (part: string) => string
  /** Without the ways to change it. */
  readOnly?: boolean
}

/** A home as it was understood, each part with the way to change it. */
export function HomeSummary({ home, hrefOf: href, readOnly }: HomeSummaryProps) {
  const hrefOf = (part: string) => (readOnly ? null : href(part))
  return (
    <dl className="facts summary">
      <Part title="Home" href={hrefOf('climate')}>
        <p>
          <strong>{home.name}</strong>
          {home.building && `, ${home.building}`}, {TENURES[home.tenure]}; time zone{' '}
          {home.timeZone.replaceAll('_', ' ')}.
        </p>
        <p>{climateFollowsInWords(climateFollows(home.climate, tables, '2026-01-01'))}</p>
      </Part>
      <Part title="People" href={hrefOf('people')}>
        <p>{dustInWords(home)}</p>
      </Part>
      {home.systems.map((system) => (
        <Part key={system.id} title={system.name} href={hrefOf(`systems/${system.id}`)}>
          <p>{systemInWords(system, home)}</p>
        </Part>
      ))}
      {home.filters.map((filter) => (
        <Part
          key={filter.id}
          title={`Filter, ${subjectInWords(home, filter.id)}`}
          href={hrefOf(`filters/${filter.id}`)}
        >
          <p>
            {filter.medium !== 'screen' && <strong>{sizeInWords(filter.nominal)}, </strong>}
            {mediumInWords(filter.medium, filter.merv)}, {placeName(filter.place)}. {changedInWords(home, filter.id)}
            {filter.labelLimitDays && ` Its print says ${filter.labelLimitDays} days at most.`}
          </p>
        </Part>
      ))}
      <Part title="Devices" href={hrefOf('devices')}>
        <p>
          {home.devices.length === 0
            ? 'None.'
            : `${capital(home.devices.map(({ id }) => subjectInWords(home, id)).join(', '))}.`}
        </p>
      </Part>
    </dl>
  )
}

const TENURES = { own: 'your own', rent: 'rented', let: 'let to others' } as const

function Part({ title, href, children }: { title: string; href: string | null; children: React.ReactNode }) {
  return (
    <>
      <dt>{title}</dt>
      <dd>
        {children}
        {href && (
          <Link href={href} aria-label={`Change: ${title}`}>
            Change
          </Link>
        )}
      </dd>
    </>
  )
}

function dustInWords(home: Household): string {
  const parts = [
    peopleInWords(home),
    home.smoking && 'somebody smokes indoors',
    home.carpet && 'mostly carpet',
    home.hardWater && 'hard water',
    home.vulnerable && 'somebody whom cold or heat may harm sooner',
  ]
  return `${parts.filter(Boolean).join('; ')}.`
}

function systemInWords({ heat, cool, fan, thermostat, delivery }: System, home: Household): string {
  const parts = [
    heat
      ? capital(sourceInWords(heat.source))
      : delivery === 'hydronic' || !cool
        ? 'Heat that the building supplies'
        : 'Cooling only',
    heat?.inputBtuh && `${numberInWords(heat.inputBtuh)} Btu/h in`,
    heat?.outputBtuh && `${numberInWords(heat.outputBtuh)} Btu/h out`,
    cool &&
      (cool.source === 'heat-pump' && heat?.source === 'heat-pump'
        ? 'which cools as well'
        : coolSourceInWords(cool.source)),
    cool?.tons && `${cool.tons} tons`,
    AIR[delivery],
    fan &&
      (fan.mode === 'auto'
        ? 'fan on auto'
        : fan.mode === 'on'
          ? 'fan always on'
          : `fan ${fan.minutesPerHour} minutes of every hour`),
    thermostat &&
      `set to ${temperatureInWords(thermostat.heatSetpointF, home.units)} and ${temperatureInWords(thermostat.coolSetpointF, home.units)}`,
  ]
  return `${parts.filter(Boolean).join(', ')}.`
}

const AIR = {
  ducted: 'air through ducts',
  ductless: 'no ducts',
  hydronic: 'hot water in pipes',
  room: 'in the room itself',
} as const

function changedInWords(home: Household, filter: string): string {
  const days = home.records.flatMap((record) =>
    record.kind === 'filter-changed' && record.filter === filter ? [record.on] : [],
  )
  const last = days.sort().at(-1)
  return last ? `Last changed on ${dateInWords(last)}.` : 'When it was last changed is not known.'
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
