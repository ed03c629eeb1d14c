import fc from 'fast-check'
import loadHighs from 'highs'
import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { dayNumber, dayText } from '@/lib/core/day'
import { plan } from '@/lib/core/plan'
import type { Item } from '@/lib/core/plan-types'
import { fewestVisits, planRounds, type RoundHome } from '@/lib/core/rounds'
import { aHousehold } from '../support/a-household'

interface Window {
  earliest: number
  due: number
  latest: number
}

const ON = 20_000

const anyWindow: fc.Arbitrary<Window> = fc
  .tuple(fc.integer({ min: -15, max: 40 }), fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 6 }))
  .map(([start, before, after]) => ({
    earliest: ON + start,
    due: ON + start + before,
    latest: ON + start + before + after,
  }))

interface Limits {
  closed: ReadonlySet<number>
  noticeDays: number
}
const NONE: Limits = { closed: new Set(), noticeDays: 0 }

/** The days on which an item may be done: where none is left in its window, the first that is open after. */
function allowed({ earliest, latest }: Window, { closed, noticeDays }: Limits = NONE): number[] {
  const from = Math.max(earliest, ON + noticeDays)
  const days = Array.from({ length: Math.max(0, latest - from + 1) }, (_, i) => from + i).filter((d) => !closed.has(d))
  if (days.length > 0) return days
  let day = Math.max(from, latest)
  while (closed.has(day)) day++
  return [day]
}

const anyLimits: fc.Arbitrary<Limits> = fc
  .tuple(fc.uniqueArray(fc.integer({ min: 0, max: 60 }), { maxLength: 40 }), fc.integer({ min: 0, max: 9 }))
  .map(([days, noticeDays]) => ({ closed: new Set(days.map((d) => ON + d)), noticeDays }))

/** The fewest visit days as an integer programme: a day is visited or not, and every item has one of its days. */
function programme(items: Window[], limits: Limits): string {
  const days = [...new Set(items.flatMap((item) => allowed(item, limits)))]
  const rows = items.map(
    (item, i) =>
      ` c${i}: ${allowed(item, limits)
        .map((d) => `d${d}`)
        .join(' + ')} >= 1`,
  )
  const names = days.map((d) => `d${d}`)
  return ['Minimize', ` obj: ${names.join(' + ')}`, 'Subject To', ...rows, 'Binary', ` ${names.join(' ')}`, 'End'].join(
    '\n',
  )
}

describe('visits', () => {
  test('are as few as an integer programme finds, each item inside its window and never before the day', {
    timeout: 60_000,
  }, async () => {
    const highs = await loadHighs()
    const each = fc.tuple(fc.array(anyWindow, { minLength: 1, maxLength: 9 }), fc.oneof(fc.constant(NONE), anyLimits))
    const cases = fc.sample(each, { seed: 7, numRuns: 400 })
    const counts = cases.map(([items, limits]) => {
      const visits = fewestVisits(items, ON, {
        isClosed: (day) => limits.closed.has(day),
        noticeDays: limits.noticeDays,
      })
      expect(visits.flatMap((v) => v.items)).toHaveLength(items.length)
      for (const { on, items: here } of visits) for (const item of here) expect(allowed(item, limits)).toContain(on)
      expect(visits).toHaveLength(Math.round(highs.solve(programme(items, limits)).ObjectiveValue))
      return visits.length
    })
    // Cases in which nothing has to be grouped, or everything can be, would prove little.
    expect(new Set(counts).size).toBeGreaterThan(3)
  })

  test('fall on the earliest day nearest the due days, not at the last moment', () => {
    const at = (earliest: number, due: number, latest: number) => ({
      earliest: ON + earliest,
      due: ON + due,
      latest: ON + latest,
    })
    expect(fewestVisits([at(5, 10, 20)], ON).map((v) => v.on)).toEqual([ON + 10])
    expect(fewestVisits([at(5, 10, 20), at(12, 15, 30)], ON).map((v) => v.on)).toEqual([ON + 12])
    expect(fewestVisits([at(0, 3, 9), at(0, 5, 9), at(0, 9, 9)], ON).map((v) => v.on)).toEqual([ON + 5])
    expect(fewestVisits([at(-9, -8, -7), at(-3, 2, 4)], ON).map((v) => v.on)).toEqual([ON])
    expect(fewestVisits([at(-9, -8, -7), at(1, 2, 4)], ON).map((v) => v.on)).toEqual([ON, ON + 2])
  })

  test('fall on the open day of all their items’ days that is nearest the due days, the earlier of two', () => {
    fc.assert(
      fc.property(fc.array(anyWindow, { minLength: 1, maxLength: 5 }), anyLimits, (items, limits) => {
        for (const { on, items: here } of fewestVisits(items, ON, {
          isClosed: (day) => limits.closed.has(day),
          noticeDays: limits.noticeDays,
        })) {
          const shared = here.map((item) => allowed(item, limits)).reduce((a, b) => a.filter((day) => b.includes(day)))
          const far = (day: number) => here.reduce((sum, { due }) => sum + Math.abs(due - day), 0)
          const best = Math.min(...shared.map(far))
          expect(on).toBe(shared.find((day) => far(day) === best))
        }
      }),
      { seed: 11, numRuns: 300 },
    )
  })

  test('of a calendar that is never open are refused, not searched for without end', () => {
    expect(() => fewestVisits([{ earliest: ON, due: ON, latest: ON }], ON, { isClosed: () => true })).toThrow(
      RangeError,
    )
  })

  test('give way to closed days by as few days as may be, and never leave a window for it', () => {
    const visit = (closed: number[], ...items: [earliest: number, due: number, latest: number][]) =>
      fewestVisits(
        items.map(([earliest, due, latest]) => ({ earliest: ON + earliest, due: ON + due, latest: ON + latest })),
        ON,
        { isClosed: (day) => closed.includes(day - ON) },
      ).map(({ on }) => on - ON)
    // Two days as near as each other: the earlier.
    expect(visit([10], [0, 10, 20])).toEqual([9])
    expect(visit([9, 10], [0, 10, 20])).toEqual([11])
    expect(visit([10, 11], [0, 10, 20])).toEqual([9])
    expect(visit([8, 9, 10, 11], [0, 10, 20], [0, 10, 20], [0, 9, 20])).toEqual([12])
    // Nearer to the due day, but after the window or before it.
    expect(visit([5, 6, 7, 8, 9, 10], [0, 9, 9])).toEqual([4])
    expect(visit([3, 4, 5, 6, 7], [3, 3, 20])).toEqual([8])
    expect(visit([5, 6, 7, 8, 9, 10], [0, 9, 9], [8, 12, 20])).toEqual([4, 12])
    expect(visit([0, 1, 2, 3], [-9, -5, -4])).toEqual([4])
  })

  test('fall on the middle one of three due days, in whatever order their windows close', () => {
    const at = (due: number, latest: number) => ({ earliest: ON, due: ON + due, latest: ON + latest })
    const on = (...items: ReturnType<typeof at>[]) => fewestVisits(items, ON).map((visit) => visit.on - ON)
    expect(on(at(9, 9), at(3, 10), at(5, 11))).toEqual([5])
    expect(on(at(3, 9), at(9, 10), at(5, 11))).toEqual([5])
    expect(on(at(5, 9), at(3, 10), at(9, 11))).toEqual([5])
  })

  test('none are needed for nothing', () => expect(fewestVisits([], ON)).toEqual([]))
})

describe('the rounds of a plan', () => {
  const on = '2026-11-25'
  const unit = (id: string, change: Parameters<typeof aHousehold>[0] = {}) =>
    aHousehold({ id, name: `Flat ${id}`, building: 'Larkspur Court', tenure: 'let', readings: [], ...change })
  const homesOf = (rounds: ReturnType<typeof plan>['rounds']) =>
    rounds.map((r) => [...new Set(r.items.map((i) => i.household))].sort().join('+'))

  test('group let homes of one building, and nobody else’s', () => {
    const homes = [unit('a'), unit('b'), unit('c', { tenure: 'rent' }), unit('d', { building: 'Elm Row' })]
    const rounds = plan(homes, tables, on).rounds
    expect(new Set(homesOf(rounds))).toEqual(new Set(['a+b', 'c', 'd']))
    expect(plan([unit('a', { building: undefined })], tables, on).rounds[0]?.building).toBe('Flat a')
  })

  test('keep residents and technicians apart, and hold what opens within 60 days only', () => {
    const { rounds, households } = plan([unit('a'), unit('b')], tables, on)
    const items = new Map(households.flatMap((h) => h.items.map((i) => [`${h.id} ${i.task} ${i.subject}`, i] as const)))
    const visited = rounds.flatMap((r) =>
      r.items.map((i) => {
        const item = items.get(`${i.household} ${i.task} ${i.subject}`)
        expect(item?.doer).toBe(r.doer)
        return item
      }),
    )
    const edge = dayText(Math.round(Date.parse(on) / 86_400_000) + 60)
    expect(visited).toHaveLength([...items.values()].filter((i) => i.earliest <= edge).length)
    expect(visited.length).toBeGreaterThan(0)
    expect(visited.length).toBeLessThan(items.size)
    expect(new Set(rounds.map((r) => r.doer))).toEqual(new Set(['resident', 'technician']))
  })
})

describe('rounds over many homes', () => {
  const on = dayNumber('2026-11-25')
  const item = (task: 'alarm-test' | 'change-filter', earliest: number, due: number, latest: number, subject = 'x') =>
    ({
      task,
      subject,
      doer: task === 'alarm-test' ? 'resident' : 'technician',
      earliest: dayText(on + earliest),
      due: dayText(on + due),
      latest: dayText(on + latest),
    }) as Item
  const home = (id: string, items: Item[], change: Partial<RoundHome> = {}) => ({
    home: { id, name: `Flat ${id}`, building: 'Elm Row', tenure: 'let' as const, ...change },
    plan: { items },
    on,
  })

  test('take in what opens within so many days, the last of them too', () => {
    const homes = [home('a', [item('alarm-test', 10, 12, 14)]), home('b', [item('alarm-test', 11, 12, 14)])]
    const taken = (openDays: number) => planRounds(homes, { openDays }).rounds.flatMap(({ items }) => items.length)
    expect([taken(9), taken(10), taken(11)]).toEqual([[], [1], [2]])
  })

  test('stand by day, building, doer and home, and within one by home, task and subject', () => {
    const at = (subject = 'x') => item('alarm-test', 0, 1, 1, subject)
    const homes = [
      home('z', [item('change-filter', 0, 1, 1), at('y'), at('x')]),
      home('c', [at()], { tenure: 'own', building: undefined, name: 'Ash' }),
      home('b', [at()], { tenure: 'own', building: undefined, name: 'Ash' }),
      home('a', [item('alarm-test', 3, 4, 4), at()]),
    ]
    const { rounds } = planRounds(homes, { openDays: 60 })
    expect(rounds.map(({ on: day, building, doer }) => [day, building, doer])).toEqual([
      ['2026-11-26', 'Ash', 'resident'],
      ['2026-11-26', 'Ash', 'resident'],
      ['2026-11-26', 'Elm Row', 'resident'],
      ['2026-11-26', 'Elm Row', 'technician'],
      ['2026-11-29', 'Elm Row', 'resident'],
    ])
    expect(rounds.slice(0, 2).map(({ items }) => items[0]?.household)).toEqual(['b', 'c'])
    expect(rounds[2]?.items.map(({ household, subject }) => `${household} ${subject}`)).toEqual(['a x', 'z x', 'z y'])
  })

  test('say how many days it would take to do each on its due day, what is due already today', () => {
    const homes = [
      home('a', [item('alarm-test', -9, -3, 5), item('alarm-test', 0, 0, 5, 'y'), item('alarm-test', 0, 4, 5, 'z')]),
      home('b', [item('alarm-test', 0, 4, 9), item('change-filter', 0, 4, 9)]),
    ]
    // The residents' days are today and the 29th, the technician's the 29th.
    expect(planRounds(homes, { openDays: 60 }).daysIfEachOnItsDue).toBe(3)
    expect(planRounds(homes, { openDays: 60 }).rounds).toHaveLength(2)
  })

  test('count what is due already as today’s, and nothing else', () => {
    const dues = [-3, 0, 4, 5].map((due) => item('alarm-test', -9, due, 9, `s${due}`))
    expect(planRounds([home('a', dues)], { openDays: 60 }).daysIfEachOnItsDue).toBe(3)
  })

  test('are not shared by let homes of which no building is known', () => {
    const alone = { building: undefined }
    const homes = [home('a', [item('alarm-test', 0, 1, 1)], alone), home('b', [item('alarm-test', 0, 1, 1)], alone)]
    expect(planRounds(homes, { openDays: 60 }).rounds.map(({ building }) => building)).toEqual(['Flat a', 'Flat b'])
  })

  test('keep to a calendar and a notice, and search it for seven years and no longer', () => {
    const one = [{ earliest: ON, due: ON, latest: ON + 3 }]
    expect(fewestVisits(one, ON, { noticeDays: 2 })[0]?.on).toBe(ON + 2)
    expect(fewestVisits(one, ON, { isClosed: (day) => day < ON + 2569 })[0]?.on).toBe(ON + 2569)
    expect(() => fewestVisits(one, ON, { isClosed: (day) => day < ON + 2570 })).toThrow('no open day within 2569 days')
    // The last days of the window are closed: the last open one still counts.
    const late = [{ earliest: ON, due: ON + 9, latest: ON + 9 }]
    expect(fewestVisits(late, ON, { isClosed: (day) => day > ON + 4 && day < ON + 20 })[0]?.on).toBe(ON + 4)
  })
})
