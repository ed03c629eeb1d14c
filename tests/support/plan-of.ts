import { tables } from '@/content/tables'
import type { Filter, Household, System, Task } from '@/lib/core/household'
import { plan } from '@/lib/core/plan'
import { aHousehold } from './a-household'

/** A cold climate: heating from September to May, cooling in high summer. */
export const COLD = { kind: 'annual', hdd65: 6200, cdd65: 850, heatingDesignF: 2, coolingDesignF: 88 } as const
/** So warm that it is never heated, and cooled all year. */
export const TROPICAL = { kind: 'annual', hdd65: 0, cdd65: 6500, heatingDesignF: 64, coolingDesignF: 90 } as const
/** So even and cold that it is heated all year, and never cooled. */
export const POLAR = { kind: 'annual', hdd65: 14_000, cdd65: 0, heatingDesignF: -40, coolingDesignF: 65 } as const

export const PUMP: System = {
  id: 'main',
  name: 'Main',
  delivery: 'ducted',
  heat: { source: 'heat-pump' },
  cool: { source: 'heat-pump', tons: 3 },
}

/** The same air every hour of every day, so that a filter catches the same every day. */
export const EVEN: System = {
  id: 'main',
  name: 'Main',
  delivery: 'ducted',
  fan: { mode: 'on' },
  airflowCfm: { cool: 300 },
}
/** A filter of a common size behind a grille in the wall. */
export const HALL: Filter = {
  id: 'hall',
  system: 'main',
  place: 'wall-grille',
  nominal: { widthIn: 16, heightIn: 25, depthIn: 1 },
  medium: 'pleated',
  merv: 8,
}

/** An invented home without devices, records or readings unless the change brings them. */
export function bareHome(change: Partial<Household> = {}): Household {
  return aHousehold({ since: '2026-09-01', dustEvents: [], devices: [], records: [], readings: [], ...change })
}

/** One home's item for a task, with its days and basis; undefined where the task is not asked for. */
export function itemOf(home: Household, task: Task, on = '2026-11-25', subject?: string) {
  const items = plan([home], tables, on).households[0]?.items ?? []
  const found = items.find((i) => i.task === task && (subject === undefined || i.subject === subject))
  if (!found) return undefined
  const { earliest, due, latest, basis, doer, state } = found
  return { earliest, due, latest, basis, doer, state }
}
