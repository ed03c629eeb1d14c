import { tables } from '@/content/tables'
import { type Day, type DayNumber, dayNumber } from '@/lib/core/day'
import type { Household } from '@/lib/core/household'
import { planHousehold } from '@/lib/core/plan'
import type { Item } from '@/lib/core/plan-types'
import { pooledHomes } from '@/lib/core/pooled-homes'
import { Profiles } from '@/lib/core/profile'
import {
  randomFrom,
  type SimulatedHome,
  type SimulatedOwner,
  simulateHome,
  simulateOwners,
} from '../support/simulated-homes'
import { atMost, middle, type Row } from './table'

const HOMES = 2000
const SEED = 20261125
const NO_LIMIT = 3000
const profiles = new Profiles(tables.figures)

function filterItem(home: Household, on: Day): Item & { early: Day; late: Day; lookOn: Day } {
  const item = planHousehold(home, tables, on, profiles).items.find(({ subject }) => subject === 'hall')
  if (!item?.early || !item.late || !item.lookOn) throw new Error('a simulated filter has a loading model')
  return { ...item, early: item.early, late: item.late, lookOn: item.lookOn }
}

function simulated(looks: number, limitDays?: number): SimulatedHome[] {
  const random = randomFrom(SEED + looks)
  const sigma = tables.figures.thetaSigma.value
  return Array.from({ length: HOMES }, (_, i) =>
    simulateHome({ id: `home-${i}`, logTheta: sigma * random.normal(), looks, limitDays }, random),
  )
}

interface Wrong {
  /** Mean absolute error, and that of the middle home, days. */
  mean: number
  middle: number
  covered: number
}

/** How far the forecast day lies from the day the filter is really full, no calendar limit applying. */
function errorOf(homes: { home: Household; on: Day; full: DayNumber }[]): Wrong {
  const off: number[] = []
  let covered = 0
  for (const { home, on, full } of homes) {
    const item = filterItem(home, on)
    off.push(Math.abs(dayNumber(item.due) - full))
    if (dayNumber(item.early) <= full && full <= dayNumber(item.late)) covered++
  }
  off.sort((a, b) => a - b)
  const mean = off.reduce((sum, days) => sum + days, 0) / off.length
  return { mean, middle: off[Math.floor(off.length / 2)] as number, covered: covered / off.length }
}

/** When a filter is changed by a rule: a day, for a home whose filter was changed on `on`. */
type Rule = (home: SimulatedHome) => DayNumber

const everySo =
  (days: number): Rule =>
  ({ on }) =>
    dayNumber(on) + days

const onDueDay: Rule = ({ home, on }) => dayNumber(filterItem(home, on).due)

/** Whoever looks when asked to, and changes it when it is due, be it today. */
function afterLooking({ home, on, lookOn }: SimulatedHome): DayNumber {
  let records = home.records
  let today = on
  for (;;) {
    const item = filterItem({ ...home, records }, today)
    // A look day that has passed stays where it was; the next look is a fortnight after the last at the least.
    if (item.lookOn >= item.due || item.due <= today || item.lookOn <= today)
      return Math.max(dayNumber(item.due), dayNumber(today))
    today = item.lookOn
    records = [...records, { on: today, kind: 'filter-looked', filter: 'hall', light: lookOn(today) }]
  }
}

function outcome(homes: SimulatedHome[], rule: Rule) {
  let beyond = 0
  let tooLong = 0
  let thrownAway = 0
  let filters = 0
  for (const home of homes) {
    const changed = rule(home)
    if (changed > home.full) beyond++
    tooLong += Math.max(0, changed - home.full)
    thrownAway += Math.max(0, home.full - changed)
    filters += 365 / (changed - dayNumber(home.on))
  }
  const mean = (sum: number) => sum / homes.length
  return { beyond: mean(beyond), tooLong: mean(tooLong), thrownAway: mean(thrownAway), filters: mean(filters) }
}

const OWNERS = { owners: 100, homesEach: 20, seed: SEED }

const unseen = (homes: SimulatedHome[]) => homes.filter(({ home }) => home.records.length === 1)

/** The same homes, each that stands alone starting from what the owner's others told. */
function told(owners: SimulatedOwner[]): SimulatedHome[] {
  return owners.flatMap(({ homes }) => {
    const on = new Map(homes.map((one) => [one.home.id, one.on]))
    const facts = homes.map(({ home }) => home)
    const pooled = pooledHomes(facts, tables, (home) => on.get(home.id) as Day)
    return homes.map((one, i) => ({ ...one, home: pooled[i] as Household }))
  })
}

const percent = (share: number) => `${Math.round(100 * share)} %`
const days = (count: number) => count.toFixed(0)

/** The two tables, as lines of Markdown: how wrong the forecast is, and what comes of following it. */
export function calibration(): string[] {
  const lines = [
    '| The forecast after | wrong by, mean | wrong by, middle home | range holds the day |',
    '|---|---|---|---|',
  ]
  const add = (name: string, { mean, middle, covered }: Wrong) =>
    lines.push(`| ${name} | ${days(mean)} days | ${days(middle)} days | ${percent(covered)} |`)
  for (const looks of [0, 1, 3, 6]) {
    add(looks === 0 ? 'no look' : looks === 1 ? 'one look' : `${looks} looks`, errorOf(simulated(looks, NO_LIMIT)))
  }
  const owners = simulateOwners(OWNERS, NO_LIMIT)
  add('no look, ten other homes of the owner left out', errorOf(unseen(owners.flatMap(({ homes }) => homes))))
  add('no look, told by ten other homes of the owner', errorOf(unseen(told(owners))))
  // The model does not know how much of the spread lies within one owner's homes: what if it is little, or nearly all?
  for (const within of [0.2, 0.95]) {
    const name = `the same where ${percent(within)} of the spread lies within one owner's homes`
    add(name, errorOf(unseen(told(simulateOwners({ ...OWNERS, within }, NO_LIMIT)))))
  }

  lines.push(
    '',
    '| Changed | left in beyond loaded | days too long, mean | days thrown away, mean | filters a year |',
    '|---|---|---|---|---|',
  )
  const rules: [string, number, Rule][] = [
    ['every 30 days', 0, everySo(30)],
    ['every 90 days', 0, everySo(90)],
    ['on the due day, no look', 0, onDueDay],
    ['on the due day, three looks before', 3, onDueDay],
    ['on the due day, six looks before', 6, onDueDay],
    ['on the early day, three looks before', 3, ({ home, on }) => dayNumber(filterItem(home, on).early)],
    ['looked at when asked, no look before', 0, afterLooking],
    ['looked at when asked, three looks before', 3, afterLooking],
  ]
  for (const [name, looks, rule] of rules) {
    const { beyond, tooLong, thrownAway, filters } = outcome(simulated(looks), rule)
    lines.push(`| ${name} | ${percent(beyond)} | ${days(tooLong)} | ${days(thrownAway)} | ${filters.toFixed(1)} |`)
  }
  return lines
}

/** The whole plan of one household with six looks, on the clock: the posterior is a part of it. */
export function learningRows(): Row[] {
  const [one] = simulated(6)
  if (!one) throw new Error('there is a home')
  const rounds = Array.from({ length: 201 }, () => {
    const start = process.hrtime.bigint()
    planHousehold(one.home, tables, one.on, profiles)
    return Number(process.hrtime.bigint() - start) / 1e6
  })
  return [atMost('the posterior of one home with six looks, its whole plan with it', middle(rounds), 1, 'ms')]
}
