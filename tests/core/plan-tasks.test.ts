import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import type { Device, Household, System, Task } from '@/lib/core/household'
import { plan } from '@/lib/core/plan'
import { bareHome, COLD } from '../support/plan-of'

const ON = '2026-11-25'

function itemsOf(change: Partial<Household>) {
  return plan([bareHome({ climate: COLD, ...change })], tables, ON).households[0]?.items ?? []
}

function subjectsOf(task: Task, change: Partial<Household>): string[] {
  return itemsOf(change).flatMap((item) => (item.task === task ? [item.subject] : []))
}

describe('the tasks of a system', () => {
  const AC = { source: 'central-ac' } as const
  const PUMP = { source: 'heat-pump' } as const
  const tasksOf = (system: Omit<System, 'id' | 'name'>) =>
    itemsOf({ filters: [], systems: [{ id: 'main', name: 'Main', ...system }] })
      .map((item) => item.task)
      .sort()

  test.each<[string, Omit<System, 'id' | 'name'>, Task[]]>([
    [
      'a furnace with an air conditioner: both services, and the unit outside',
      { delivery: 'ducted', heat: { source: 'gas-furnace' }, cool: AC },
      ['cooling-service', 'heating-service', 'outdoor-unit-clear'],
    ],
    ['a furnace alone: its service', { delivery: 'ducted', heat: { source: 'oil-furnace' } }, ['heating-service']],
    [
      'a heat pump that is told as heat only gets both services all the same, and has its unit outside',
      { delivery: 'ducted', heat: PUMP },
      ['cooling-service', 'heating-service', 'outdoor-unit-clear'],
    ],
    [
      'a heat pump that is told as cooling only gets both services',
      { delivery: 'ductless', cool: PUMP },
      ['cooling-service', 'heating-service', 'outdoor-unit-clear'],
    ],
    [
      'dual fuel gets both services',
      { delivery: 'ducted', heat: { source: 'dual-fuel' } },
      ['cooling-service', 'heating-service', 'outdoor-unit-clear'],
    ],
    [
      'a boiler gets its own service, and a central air conditioner beside it another',
      { delivery: 'ducted', heat: { source: 'propane-boiler' }, cool: AC },
      ['boiler-service', 'cooling-service', 'outdoor-unit-clear'],
    ],
    ['an oil boiler alone: its service', { delivery: 'hydronic', heat: { source: 'oil-boiler' } }, ['boiler-service']],
    ['an air conditioner in a window: nothing', { delivery: 'room', cool: AC }, []],
    [
      'a heat pump in a room is no window unit',
      { delivery: 'room', heat: PUMP, cool: PUMP },
      ['cooling-service', 'heating-service', 'outdoor-unit-clear'],
    ],
    [
      'neither is cooling in a room that a heat pump or dual fuel heats',
      { delivery: 'room', heat: { source: 'dual-fuel' }, cool: AC },
      ['cooling-service', 'heating-service', 'outdoor-unit-clear'],
    ],
    [
      'neither is a heat pump that is told as cooling only',
      { delivery: 'room', cool: PUMP },
      ['cooling-service', 'heating-service', 'outdoor-unit-clear'],
    ],
    ['a system of nothing but air: nothing', { delivery: 'ducted' }, []],
  ])('%s', (_, system, tasks) => expect(tasksOf(system)).toEqual(tasks))
})

test('the unit outside of what cools and pumps heat in one room is cleared in the cooling season too', () => {
  for (const source of ['dual-fuel', 'heat-pump'] as const) {
    const room: System = {
      id: 'main',
      name: 'Main',
      delivery: 'room',
      heat: { source },
      cool: { source: 'central-ac' },
    }
    const found = itemsOf({ systems: [room], since: '2026-07-10' }).find(({ task }) => task === 'outdoor-unit-clear')
    expect(found?.due).toBe('2026-07-10')
  }
})

describe('a device that runs with a system', () => {
  const boiler: System = { id: 'floor', name: 'Floors', delivery: 'hydronic', heat: { source: 'gas-boiler' } }
  const cooling: System = { id: 'attic', name: 'Attic', delivery: 'ducted', cool: { source: 'central-ac' } }
  const drain: Device = { id: 'drain', kind: 'condensate-drain' }
  const pad: Device = { id: 'pad', kind: 'humidifier' }

  test('belongs to the first that cools or heats, where nobody said to which', () => {
    const systems = [boiler, cooling]
    expect(subjectsOf('condensate-look', { systems, devices: [drain], filters: [] })).toEqual(['drain'])
    expect(subjectsOf('humidifier-pad', { systems: [cooling, boiler], devices: [pad], filters: [] })).toEqual(['pad'])
    // Where nothing cools there is no line, and where nothing heats no pad.
    expect(subjectsOf('condensate-look', { systems: [boiler], devices: [drain], filters: [] })).toEqual([])
    expect(subjectsOf('humidifier-pad', { systems: [cooling], devices: [pad], filters: [] })).toEqual([])
  })

  test('is that system’s alone, where it was said', () => {
    const on = (system: string) => ({ systems: [boiler, cooling], filters: [], devices: [{ ...drain, system }] })
    expect(subjectsOf('condensate-look', on('attic'))).toEqual(['drain'])
    // A boiler has no cooling season.
    expect(subjectsOf('condensate-look', on('floor'))).toEqual([])
    expect(subjectsOf('condensate-look', on('gone'))).toEqual([])
  })

  test('goes by when it was itself done', () => {
    const done = (subject: string, task: Task) => ({ on: '2026-07-01', kind: 'service-done' as const, task, subject })
    const records = [
      done('drain', 'condensate-look'),
      done('pad', 'humidifier-pad'),
      done('main', 'outdoor-unit-clear'),
    ]
    const tasks: Task[] = ['condensate-look', 'humidifier-pad', 'outdoor-unit-clear']
    const basisOf = (change: Partial<Household>) =>
      tasks.map((task) => itemsOf({ devices: [drain, pad], ...change }).find((item) => item.task === task)?.basis)
    expect(basisOf({ since: '2026-07-10', records: [] })[0]).toBe('never-recorded')
    expect(basisOf({ since: '2026-07-10', records })).not.toContain('never-recorded')
  })
})

describe('a plan', () => {
  test('has its items by day, then by task, then by subject', () => {
    const alarm = (id: string): Device => ({ id, kind: 'smoke-alarm', made: '2020-01-01' })
    const items = itemsOf({ devices: [alarm('b'), alarm('a'), alarm('c')] })
    const keys = items.map(({ due, task, subject }) => `${due} ${task} ${subject}`)
    expect(keys).toEqual([...keys].sort())
    expect(items.filter(({ task }) => task === 'alarm-test').map(({ subject }) => subject)).toEqual(['a', 'b', 'c'])
    expect(items.length).toBeGreaterThan(8)
    // Of two tasks on one day the task decides, whatever they are done on.
    const both = itemsOf({ devices: [alarm('z'), { id: 'a', kind: 'hrv' }] }).filter(
      ({ doer, subject }) => doer === 'resident' && 'az'.includes(subject),
    )
    expect(both.slice(0, 3).map(({ due, task, subject }) => `${due} ${task} ${subject}`)).toEqual([
      ...['2026-09-01 alarm-test z', '2026-09-01 ventilator-core a', '2026-09-01 ventilator-hoods a'],
    ])
  })

  test('is of one day for all homes, or of each home’s own', () => {
    const homes = [bareHome({ id: 'one', since: undefined }), bareHome({ id: 'two', since: undefined })]
    const days = { one: '2026-11-25', two: '2026-11-26' } as Record<string, string>
    const both = plan(homes, tables, (home) => days[home.id] ?? '')
    expect(both.on).toBe('2026-11-25')
    const dueOf = (i: number) => both.households[i]?.items.find(({ task }) => task === 'change-filter')?.due
    expect([dueOf(0), dueOf(1)]).toEqual(['2026-11-25', '2026-11-26'])
    expect(plan([], tables, () => ON).on).toBe('')
    expect(plan([], tables, ON).on).toBe(ON)
  })

  test('counts the days of a home from when it was first described', () => {
    expect(itemsOf({ since: '2026-08-01' }).find(({ task }) => task === 'change-filter')?.due).toBe('2026-08-01')
  })
})
