import type { Mark } from '@/lib/core/tables'

/** One advice for a house that stands empty. */
export interface AwayAdvice {
  say: string
  mark: Mark
  source?: string
}

// safety.md 1.7: the Red Cross figure is read in relays by city and press; a building-research note and insurers say
// 55 to 62 °F. The higher figure is the more cautious one, so it is named too.
const RED_CROSS = 'American Red Cross, Preventing & Thawing Frozen Pipes, as passed on by cities and the press'

/** While it is cold outside. */
export const COLD_ADVICE: readonly AwayAdvice[] = [
  {
    say: 'Leave the heat on, set no lower than 55 °F (13 °C). Some insurers ask for 62 °F (17 °C): read your policy.',
    mark: 'G?',
    source: RED_CROSS,
  },
  {
    say: 'Ask somebody to go in and see that the heat runs: every day or two while it freezes, and after any power cut.',
    mark: 'P',
  },
  {
    say: 'Open the cabinets under sinks on outside walls, so that warm air reaches the pipes.',
    mark: 'G?',
    source: RED_CROSS,
  },
  {
    say: 'Know where the main water shut-off is, and show it to whoever looks in. A plumber can tell you whether the water may be turned off and the pipes drained while you are away; do not do that to a heating system that runs on water.',
    mark: 'G?',
    source: RED_CROSS,
  },
  {
    say: 'If the house is found cold or a pipe is frozen: no flame and no heater at the pipe. Shut the water off and call a plumber.',
    mark: 'C',
  },
]

/** While it is warm outside. */
export const WARM_ADVICE: readonly AwayAdvice[] = [
  {
    say: 'Set the cooling higher rather than off where the air is damp, so that the house does not get mouldy: 85 °F (29 °C) is a common choice.',
    mark: 'P',
  },
  {
    say: 'If nobody will look in, ask whoever looks after your equipment whether the cooling’s drain can be left unwatched that long.',
    mark: 'C',
  },
]

/** At any time. */
export const ANY_ADVICE: readonly AwayAdvice[] = [
  { say: 'Smoke and carbon monoxide alarms stay on, with fresh batteries where they have any.', mark: 'P' },
]
