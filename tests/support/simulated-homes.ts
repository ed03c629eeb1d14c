import { tables } from '@/content/tables'
import { zones } from '@/content/zones'
import { firstReaching } from '@/lib/core/cycle'
import { type Day, type DayNumber, dayNumber, dayText } from '@/lib/core/day'
import type { Household, Light, LogRecord } from '@/lib/core/household'
import { Profiles } from '@/lib/core/profile'
import { systemDays } from '@/lib/core/system-days'

/** An invented home whose own dust factor is known, on the day its filter was last changed. */
export interface SimulatedHome {
  home: Household
  /** The day of the last change. */
  on: Day
  theta: number
  /** The first day by which the filter is really full. */
  full: DayNumber
  /** What a person sees at the filter on a day after `on`: the truth, and a person's eye. */
  lookOn(day: Day): Light
}

/** Numbers that look random, the same for the same seed: uniform in [0, 1), and standard normal. */
export function randomFrom(seed: number): { uniform: () => number; normal: () => number } {
  let state = seed >>> 0
  // Tommy Ettinger's mulberry32, in the public domain.
  function uniform(): number {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
  // Box and Muller's transformation.
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
  return { uniform, normal }
}

const profiles = new Profiles(tables.figures)

/**
 * A home with ln θ as given and so many looks in its past, each at another filter, at a load that a person would look
 * at. Without a `limitDays` the calendar limit of its medium applies.
 */
export function simulateHome(
  facts: { id: string; logTheta: number; looks: number; limitDays?: number },
  random: ReturnType<typeof randomFrom>,
): SimulatedHome {
  const { uniform, normal } = random
  const pick = <T>(list: readonly T[]) => list[Math.floor(uniform() * list.length)] as T
  const { hdd65, cdd65, heatingDesignF, coolingDesignF } = pick(zones.slice(2, 7))
  const [widthIn, heightIn] = pick([
    [16, 20],
    [16, 25],
    [20, 20],
    [20, 25],
  ] as const)
  const bare: Household = {
    ...{ id: facts.id, name: facts.id, tenure: 'let', timeZone: 'America/Chicago', units: 'us' },
    climate: { kind: 'annual', hdd65, cdd65, heatingDesignF, coolingDesignF },
    ...{ people: 1 + Math.floor(uniform() * 4), pets: Math.floor(uniform() * 3), smoking: false },
    ...{ carpet: uniform() < 0.5, hardWater: false, vulnerable: false, dustEvents: [] },
    systems: [
      {
        ...{ id: 'main', name: 'Main', delivery: 'ducted' },
        heat: { source: 'gas-furnace', outputBtuh: pick([50_000, 64_000, 80_000]) },
        cool: { source: 'central-ac', tons: pick([2, 2.5, 3]) },
      },
    ],
    filters: [
      {
        ...{ id: 'hall', system: 'main', place: 'wall-grille', nominal: { widthIn, heightIn, depthIn: 1 } },
        ...{ medium: 'pleated', merv: pick([8, 11]) },
        ...(facts.limitDays !== undefined && { labelLimitDays: facts.limitDays }),
      },
    ],
    ...{ devices: [], records: [], readings: [] },
  }
  const theta = Math.exp(facts.logTheta)
  const days = systemDays(bare, bare.systems[0] as Household['systems'][number], 0, tables, profiles)
  const filter = days.path.filters[0]
  if (!filter?.loading) throw new Error('the filter of a simulated home has a loading model')
  const { capacityGrams } = filter.loading
  const grams = days.gramsThrough(filter)
  const reaching = (load: number, from: DayNumber): DayNumber =>
    firstReaching(grams, grams(from) + load * capacityGrams, from + 1, from + 3000, Number.POSITIVE_INFINITY)
  const spread = tables.figures.lightSpread.value
  const { clearBelow, darkAbove } = tables.figures
  const lightAt = (load: number): Light => {
    const seen = load * Math.exp(spread * normal())
    return seen < clearBelow.value ? 'clear' : seen > darkAbove.value ? 'dark' : 'half'
  }

  const records: LogRecord[] = []
  let changed = dayNumber('2025-01-01') + Math.floor(uniform() * 365)
  for (let i = 0; i < facts.looks; i++) {
    records.push({ on: dayText(changed), kind: 'filter-changed', filter: 'hall' })
    const look = reaching(0.3 + 0.6 * uniform(), changed)
    const light = lightAt((theta * (grams(look) - grams(changed))) / capacityGrams)
    records.push({ on: dayText(look), kind: 'filter-looked', filter: 'hall', light })
    changed = look + 1
  }
  records.push({ on: dayText(changed), kind: 'filter-changed', filter: 'hall' })
  return {
    ...{ home: { ...bare, since: records[0]?.on, records }, on: dayText(changed), theta },
    full: reaching(1 / theta, changed),
    lookOn: (day) => lightAt((theta * (grams(dayNumber(day)) - grams(changed))) / capacityGrams),
  }
}

export interface SimulatedOwner {
  homes: SimulatedHome[]
}

/**
 * Owners whose homes are more or less alike: of the world's variance of ln θ a part lies within one owner's homes
 * (any share, unless one is given), the rest between owners. Half of each owner's homes were never looked at, the others one to three times.
 */
export function simulateOwners(
  { owners, homesEach, within, seed }: { owners: number; homesEach: number; within?: number; seed: number },
  limitDays?: number,
): SimulatedOwner[] {
  const random = randomFrom(seed)
  const sigma = tables.figures.thetaSigma.value
  return Array.from({ length: owners }, (_, o) => {
    const share = within ?? random.uniform()
    const mean = sigma * Math.sqrt(1 - share) * random.normal()
    const homes = Array.from({ length: homesEach }, (_, h) => {
      const logTheta = mean + sigma * Math.sqrt(share) * random.normal()
      return simulateHome({ id: `home-${o}-${h}`, logTheta, looks: h % 2 === 0 ? 0 : 1 + (h % 3), limitDays }, random)
    })
    return { homes }
  })
}
