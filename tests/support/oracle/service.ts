import type { Household, System, Task } from '@/lib/core/household'
import { number, yearOf } from './days'
import type { Hours } from './hours'
import { isPump } from './hours'
import { isInside, type Season, seasonsAround } from './season'

export interface Service {
  task: Task
  subject: string
  doer: 'resident' | 'technician'
  due: number
  earliest: number
  latest: number
  basis: string
}

export function lastDone(home: Household, task: Task, subject: string): number | undefined {
  const days = home.records.flatMap((r) =>
    r.kind === 'service-done' && r.task === task && r.subject === subject ? [number(r.on)] : [],
  )
  return days.length ? Math.max(...days) : undefined
}

export function sinceOf(home: Household, on: number): number {
  return home.since ? number(home.since) : on
}

function windowsOf(kind: 'heat' | 'cool', seasons: Season[], day: number) {
  if (seasons.length) return seasons.map(({ start }) => ({ from: start - 75, to: start - 14 }))
  const [from, to] = kind === 'heat' ? ['09-01', '10-31'] : ['03-01', '04-30']
  return Array.from({ length: 9 }, (_, i) => {
    const year = yearOf(day) - 4 + i
    return { from: number(`${year}-${from}`), to: number(`${year}-${to}`) }
  })
}

function yearly(
  { home, system, hours, on }: { home: Household; system: System; hours: Hours; on: number },
  kind: 'heat' | 'cool',
  task: Task,
): Service {
  const who = { task, subject: system.id, doer: 'technician' as const }
  const unscaled = kind === 'heat' ? hours.unscaledHeat : hours.unscaledCool
  const last = lastDone(home, task, system.id)
  const base = last ?? sinceOf(home, on)
  const seasons = seasonsAround(kind, unscaled, base)
  const windows = windowsOf(kind, seasons, base)
  if (last === undefined) {
    if (seasons.some((season) => isInside(season, base))) {
      return { ...who, due: base, earliest: base, latest: base + 30, basis: 'never-recorded' }
    }
    const next = windows.find(({ to }) => to >= base)
    if (!next) throw new Error('no window')
    return { ...who, due: next.to, earliest: next.from, latest: next.to, basis: 'season' }
  }
  const next = windows.find(({ to }) => to >= last + 180)
  if (!next) throw new Error('no window')
  let year = 0
  for (let d = number('2025-01-01'); d < number('2026-01-01'); d++) year += unscaled(d)
  let since = 0
  for (let d = last + 1; d < next.to; d++) {
    since += hours.at(d)[kind]
    if (year >= 1 && since > 1.5 * year) return { ...who, due: d, earliest: d, latest: d + 30, basis: 'runtime' }
  }
  return { ...who, due: next.to, earliest: next.from, latest: next.to, basis: 'season' }
}

/** The yearly services of one system. */
export function yearlyServices(facts: { home: Household; system: System; hours: Hours; on: number }): Service[] {
  const { system } = facts
  const services: Service[] = []
  const source = system.heat?.source
  const pump = isPump(system) || system.cool?.source === 'heat-pump'
  // What cools one room without pumping heat into it is a window air conditioner.
  const isWindowUnit = system.delivery === 'room' && !pump
  if (source?.endsWith('boiler')) services.push(yearly(facts, 'heat', 'boiler-service'))
  else if (source || pump) services.push(yearly(facts, 'heat', 'heating-service'))
  if ((system.cool && !isWindowUnit) || pump) services.push(yearly(facts, 'cool', 'cooling-service'))
  return services
}
