import { zones } from '@/content/zones'
import type { Day } from '@/lib/core/day'
import { addDays } from '@/lib/core/day'
import type { Climate, Filter, Household, LogRecord, System } from '@/lib/core/household'

const CLIMATES: Climate[] = zones.slice(1).map(({ hdd65, cdd65, heatingDesignF, coolingDesignF }) => ({
  kind: 'annual',
  hdd65,
  cdd65,
  heatingDesignF,
  coolingDesignF,
}))
const SIZES = [
  [16, 20],
  [16, 25],
  [20, 20],
  [20, 25],
  [24, 24],
] as const
const THERMOSTATS = [
  [68, 76],
  [70, 75],
  [72, 74],
] as const

function systemAt(i: number): System {
  const [heatSetpointF, coolSetpointF] = THERMOSTATS[i % 3] as (typeof THERMOSTATS)[number]
  const thermostat = { heatSetpointF, coolSetpointF }
  const fan = i % 5 === 0 ? ({ mode: 'on' } as const) : ({ mode: 'auto' } as const)
  const tons = 2 + (i % 4)
  return i % 4 === 0
    ? {
        id: 'main',
        name: 'Main',
        delivery: 'ducted',
        heat: { source: 'heat-pump' },
        cool: { source: 'heat-pump', tons },
        fan,
        thermostat,
      }
    : {
        id: 'main',
        name: 'Main',
        delivery: 'ducted',
        heat: { source: 'gas-furnace', outputBtuh: 40_000 + 5000 * (i % 9) },
        cool: { source: 'central-ac', tons },
        fan,
        thermostat,
      }
}

/**
 * Invented households for measuring: two filters, a CO and a smoke alarm each; 24 climate and thermostat settings,
 * one in twenty with a look at a filter, one in a hundred with measured hours.
 */
export function manyHouseholds(count: number, on: Day): Household[] {
  return Array.from({ length: count }, (_, i) => {
    const filters = [0, 1].map((n): Filter => {
      const [widthIn, heightIn] = SIZES[(i + n) % SIZES.length] as (typeof SIZES)[number]
      return {
        id: `f${n}`,
        system: 'main',
        place: n === 0 ? 'wall-grille' : 'ceiling-grille',
        nominal: { widthIn, heightIn, depthIn: 1 },
        medium: 'pleated',
        merv: i % 3 === 0 ? 11 : 8,
      }
    })
    const records: LogRecord[] = [
      ...filters.map(
        (f, n): LogRecord => ({ on: addDays(on, -((i * 7 + n * 13) % 120)), kind: 'filter-changed', filter: f.id }),
      ),
      {
        on: addDays(on, -((i * 11) % 500)),
        kind: 'service-done',
        task: 'heating-service',
        subject: 'main',
        by: 'technician',
      },
      {
        on: addDays(on, -((i * 17) % 500)),
        kind: 'service-done',
        task: 'cooling-service',
        subject: 'main',
        by: 'technician',
      },
      { on: addDays(on, -((i * 5) % 60)), kind: 'service-done', task: 'alarm-test', subject: 'co' },
      ...(i % 20 === 0 ? [{ on: addDays(on, -5), kind: 'filter-looked', filter: 'f0', light: 'half' } as const] : []),
    ]
    return {
      id: `unit-${i}`,
      name: `Unit ${i}`,
      building: `Building ${Math.floor(i / 10)}`,
      tenure: 'let',
      since: addDays(on, -400),
      timeZone: 'America/Chicago',
      units: 'us',
      climate: CLIMATES[i % CLIMATES.length] as Climate,
      people: 1 + (i % 5),
      pets: i % 4,
      smoking: i % 11 === 0,
      carpet: i % 2 === 0,
      hardWater: false,
      vulnerable: false,
      dustEvents: [],
      systems: [systemAt(i)],
      filters,
      devices: [
        { id: 'co', kind: 'co-alarm', made: '2024-01-01' },
        { id: 'smoke', kind: 'smoke-alarm', made: '2020-01-01' },
      ],
      records,
      readings:
        i % 100 === 0
          ? [
              {
                system: 'main',
                from: addDays(on, -60),
                to: addDays(on, -30),
                source: 'thermostat',
                heatHours: 80,
                coolHours: 5,
                fanHours: 100,
              },
            ]
          : [],
    }
  })
}
