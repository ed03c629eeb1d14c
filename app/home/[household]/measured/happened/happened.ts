import type { Household } from '@/lib/core/household'
import type { Happened } from '@/lib/forms/happened-form'

/** A home with something more that happened, and its place as the address of the page names it. */
export function withHappened(home: Household, happened: Happened): { home: Household; did: string } {
  if (happened.list === 'dust') {
    const dustEvents = [...home.dustEvents, happened.event]
    return { home: { ...home, dustEvents }, did: `dust ${keyOf(happened.event)}` }
  }
  const weather = [...(home.weather ?? []), happened.spell]
  return { home: { ...home, weather }, did: `weather ${keyOf(happened.spell)}` }
}

/** A home without one thing that happened, the latest of several alike; null where there is none such. */
export function withoutHappened(home: Household, list: string, is: string): Household | null {
  if (list === 'dust') {
    const at = home.dustEvents.findLastIndex((event) => keyOf(event) === is)
    return at < 0 ? null : { ...home, dustEvents: home.dustEvents.toSpliced(at, 1) }
  }
  const spells = home.weather ?? []
  const at = spells.findLastIndex((spell) => keyOf(spell) === is)
  if (at < 0) return null
  const { weather: _, ...rest } = home
  return spells.length === 1 ? rest : { ...rest, weather: spells.toSpliced(at, 1) }
}

/** What something that happened is known by: `smoke 2026-08-01 2026-08-07`. */
export function keyOf({ kind, from, to }: { kind: string; from: string; to: string }): string {
  return `${kind} ${from} ${to}`
}
