import type { HouseholdPlan, Item, Plan, Reason, Round, Supply, Warning, Workings } from './plan-types'

/**
 * The plan as the command line and HTTP give it: the keys of doors.md in their order, and no others. In pieces, a home
 * each, because the text of ten thousand homes is too long to be held at once.
 */
export function* planJson({ on, households, supplies, rounds }: Plan): Generator<string> {
  yield `{\n  "on": ${json(on, 1)},\n  "households": [`
  let before = '\n'
  for (const household of households) {
    yield `${before}    ${json(shownHousehold(household), 2)}`
    before = ',\n'
  }
  const end = households.length > 0 ? '\n  ]' : ']'
  yield `${end},\n  "supplies": ${json(supplies.map(shownSupply), 1)},\n  "rounds": ${json(rounds.map(shownRound), 1)}\n}\n`
}

/** A value as it stands so many levels deep in a text indented by two. */
function json(value: unknown, depth: number): string {
  return JSON.stringify(value, null, 2).replaceAll('\n', `\n${'  '.repeat(depth)}`)
}

// Written out: JSON.stringify can keep and order keys by a list, at four times the time. What is undefined is left out.

function shownHousehold({ id, items, workings, warnings }: HouseholdPlan): HouseholdPlan {
  return {
    id,
    items: items.map(shownItem),
    workings: workings.map(shownWorkings),
    warnings: warnings.map(({ code, subject, say }): Warning => ({ code, subject, say })),
  }
}

function shownItem(item: Item): Item {
  const { task, subject, doer, earliest, due, latest, lookOn, early, late, basis, state, reasons } = item
  const shown = reasons.map(({ say, mark, source }): Reason => ({ say, mark, source }))
  return { task, subject, doer, earliest, due, latest, lookOn, early, late, basis, state, reasons: shown }
}

function shownWorkings(workings: Workings): Workings {
  const { filter, heatHours, coolHours, fanHours, airflowCfm, faceVelocityFpm } = workings
  const { dustMicrogramsPerM3, arrestance, capacityGrams, pressureDropCleanInWg, loadedFraction, theta } = workings
  return {
    ...{ filter, heatHours, coolHours, fanHours, airflowCfm, faceVelocityFpm },
    ...{ dustMicrogramsPerM3, arrestance, capacityGrams, pressureDropCleanInWg, loadedFraction },
    theta: theta && { q10: theta.q10, q50: theta.q50, q90: theta.q90 },
  }
}

function shownSupply({ size, medium, merv, count }: Supply): Supply {
  return { size, medium, merv, count }
}

function shownRound({ building, doer, on, items }: Round): Round {
  return { building, doer, on, items: items.map(({ household, task, subject }) => ({ household, task, subject })) }
}
