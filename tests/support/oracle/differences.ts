import type { Household } from '@/lib/core/household'
import type { Item, Plan, Workings } from '@/lib/core/plan-types'
import { number, text } from './days'
import type { SystemFacts } from './filter'
import { type FilterReading, readFilter, systemFacts } from './household'
import { visitsOf } from './rounds'
import type { Service } from './service'
import { servicesOf } from './services'
import { neededOf } from './supplies'

// Hours and grams agree within a thousandth, days to the day.
function far(got: number | null | undefined, wanted: number | null, slack = 1e-6): boolean {
  if (got === null || got === undefined || wanted === null) return got !== wanted
  return Math.abs(got - wanted) > Math.max(0.001 * Math.abs(wanted), slack)
}

// The model fits a climate to 0.01 degree-days, so where a year has no more (a place without cooling degree-days), its
// hours are not determined closer than this.
const HOURS_SLACK = 0.01

/** Everything in which one household's plan differs from the oracle's reading of model.md: one line each, none where they agree. */
export function differences(home: Household, on: string, plan: Plan): string[] {
  const today = number(on)
  const { items = [], workings = [] } = plan.households[0] ?? {}
  const facts = new Map(home.systems.map((system) => [system.id, systemFacts(home, system, today)]))
  const of = (id: string) => facts.get(id) as SystemFacts
  const readings = home.systems.flatMap((system) =>
    home.filters.filter((f) => f.system === system.id).map((filter) => readFilter(of(system.id), system, filter)),
  )
  const services = servicesOf(home, of, today)
  const isFilters = (item: Item) => home.filters.some((f) => f.id === item.subject)
  return [
    ...readings.flatMap((r) => [
      ...workingDifferences(
        r,
        workings.find((w) => w.filter === r.filter.id),
      ),
      ...forecastDifferences(
        r,
        items.find((i) => i.subject === r.filter.id),
      ),
    ]),
    ...compareLists(
      'service',
      items.filter((i) => !isFilters(i)).map(itemLine),
      services.map((s) => itemLine({ ...s, earliest: text(s.earliest), due: text(s.due), latest: text(s.latest) })),
    ),
    ...compareLists(
      'supply',
      plan.supplies.map((s) => `${s.size} ${s.medium} ${s.merv}: ${s.count}`),
      needs(readings),
    ),
    ...compareLists(
      'round',
      plan.rounds.map((r) => `${r.doer} ${r.on}: ${r.items.map((i) => `${i.task} ${i.subject}`).sort()}`),
      rounds([...readings.map(filterService), ...services], today),
    ),
  ]
}

function workingDifferences(r: FilterReading, w: Workings | undefined): string[] {
  const pairs: [string, number | null | undefined, number | null][] = [
    ['heat hours', w?.heatHours, r.heatHours],
    ['cool hours', w?.coolHours, r.coolHours],
    ['fan hours', w?.fanHours, r.fanHours],
    ['cfm', w?.airflowCfm, r.airflowCfm],
    ['fpm', w?.faceVelocityFpm, r.faceVelocityFpm],
    ['dust', w?.dustMicrogramsPerM3, r.dust],
    ['arrestance', w?.arrestance, r.arrestance],
    ['capacity', w?.capacityGrams, r.capacity],
    ['pressure drop', w?.pressureDropCleanInWg, r.drop],
    ['loaded fraction', w?.loadedFraction, r.forecast.loaded],
    ...(['q10', 'q50', 'q90'] as const).map((q): [string, number | null | undefined, number | null] => [
      `θ ${q}`,
      w && (w.theta?.[q] ?? null),
      r.capacity === null ? null : r.theta[q],
    ]),
  ]
  return pairs.flatMap(([name, got, wanted]) =>
    far(got, wanted, name.endsWith('hours') ? HOURS_SLACK : undefined)
      ? [`${r.filter.id} ${name}: ${got}, oracle ${wanted}`]
      : [],
  )
}

function forecastDifferences({ filter, forecast }: FilterReading, item: Item | undefined): string[] {
  const days = (['earliest', 'due', 'latest', 'lookOn', 'early', 'late'] as const).flatMap((name) => {
    const wanted = forecast[name] === null ? null : text(forecast[name])
    return item?.[name] === wanted ? [] : [`${filter.id} ${name}: ${item?.[name]}, oracle ${wanted}`]
  })
  return item?.basis === forecast.basis ? days : [...days, `${filter.id}: ${item?.basis}, oracle ${forecast.basis}`]
}

function itemLine(item: Pick<Item, 'task' | 'subject' | 'doer' | 'earliest' | 'due' | 'latest'> & { basis: string }) {
  return [item.task, item.subject, item.doer, item.earliest, item.due, item.latest, item.basis].join(' ')
}

function filterService({ filter, forecast }: FilterReading): Service {
  const task = filter.medium === 'washable' || filter.medium === 'screen' ? 'wash-filter' : 'change-filter'
  return { task, subject: filter.id, doer: 'resident', ...forecast }
}

function needs(readings: FilterReading[]): string[] {
  const counts = new Map<string, number>()
  for (const { filter, facts } of readings) {
    const { widthIn, heightIn, depthIn } = filter.nominal
    const merv = filter.merv ?? (filter.medium === 'fiberglass' ? null : 8)
    const key = `${widthIn}x${heightIn}x${depthIn} ${filter.medium} ${merv}`
    counts.set(key, (counts.get(key) ?? 0) + neededOf(facts, filter, 12))
  }
  return [...counts].flatMap(([key, count]) => (count ? [`${key}: ${count}`] : []))
}

function rounds(services: Service[], on: number): string[] {
  const soon = services.filter((s) => s.earliest <= on + 60)
  return (['resident', 'technician'] as const).flatMap((doer) =>
    visitsOf(
      soon.filter((s) => s.doer === doer),
      on,
    ).map(({ day, items }) => `${doer} ${text(day)}: ${items.map((i) => `${i.task} ${i.subject}`).sort()}`),
  )
}

function compareLists(name: string, got: string[], wanted: string[]): string[] {
  return [
    ...got.filter((line) => !wanted.includes(line)).map((line) => `${name}: ${line}; not in the oracle`),
    ...wanted.filter((line) => !got.includes(line)).map((line) => `${name}: missing ${line}`),
  ]
}
