import { plural } from '@/lib/core/day-words'
import type { OutcomeOf } from '@/lib/data/record-together'

/** What pressing the button of a page of boxes did, in words, and what of it can be taken back. */
export interface Recorded {
  say: string[]
  /** `home/entry home/entry`, empty for nothing. */
  undo: string
}

/** What was taken back, and which entries: as `undo` of what recorded them. */
export interface TakenBack {
  say: string
  entries: string
}

/** Entries as a hidden field sends them: `home/entry home/entry`. */
export function entriesText(outcomes: readonly OutcomeOf[]): string {
  return outcomes.map(({ householdId, entry }) => `${householdId}/${entry.id}`).join(' ')
}

/** `12 recorded.`, and by whom what had been recorded before: of two who do the same, both are told. */
export function saidOf(outcomes: readonly OutcomeOf[], nameOf: (householdId: string) => string): Recorded {
  const fresh = outcomes.filter(({ outcome }) => outcome === 'recorded')
  const before = new Map<string, Set<string>>()
  for (const { outcome, entry, householdId } of outcomes) {
    if (outcome !== 'already' && outcome !== 'differs') continue
    const names = before.get(entry.by.name) ?? new Set()
    before.set(entry.by.name, names.add(nameOf(householdId)))
  }
  const completed = outcomes.length - fresh.length - outcomes.filter(isBefore).length
  return {
    say: [
      ...(fresh.length > 0 ? [`${plural(fresh.length, 'thing')} recorded. The days are reckoned anew.`] : []),
      ...(completed > 0 ? [`${plural(completed, 'earlier record')} completed.`] : []),
      ...[...before].map(([who, homes]) => `Recorded already by ${who}, and counted once: ${[...homes].join(', ')}.`),
    ],
    undo: entriesText(fresh),
  }
}

function isBefore({ outcome }: OutcomeOf): boolean {
  return outcome === 'already' || outcome === 'differs'
}
