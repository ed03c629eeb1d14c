import type { Filter, Household, System } from '@/lib/core/household'
import { homeInWords } from '@/lib/core/subject-words'
import { heightInWords, numberInWords, type Units } from '@/lib/core/unit-words'
import { CHANGED } from './address'
import type { Episode, EpisodeEvent } from './episode'
import { fillEmergency } from './export'
import { HAZARD_WORDS } from './hazard-words'
import { bit, hazardsAdmitted, CHANGED as MAY_HAVE_COME } from './monitor'
import type { TakenStep } from './replay'
import type { TimedEvent, Watched } from './startup-watcher'
import type { Flow, GuideNode, Hazard, Severity } from './types'
import { findNode, HAZARDS } from './types'

/** One page for the technician. Every line is a fact somebody gave or the guide showed; nothing is a diagnosis. */
export interface Brief {
  title: string
  sections: { heading: string; lines: string[] }[]
}

export interface FilterState {
  filter: Filter
  /** Estimated share of its capacity, 0 and up; null: not known. */
  loadedFraction: number | null
  lastChangedOn: string | null
}

export interface BriefParts {
  flow: Flow
  /** When the walk began, in words of the household's zone: "25 November 2026, 21:04". */
  startedAt: string
  /** Null: nobody is signed in. */
  household: Household | null
  system: System | null
  taken: readonly TakenStep[]
  /** Where the walk ended, or null while it goes on. */
  outcome: GuideNode | null
  watched: Watched | null
  watchedEvents: readonly TimedEvent[]
  episode: Episode | null
  events: readonly EpisodeEvent[]
  filters: readonly FilterState[]
  roomF: number | null
  /** A metric home's figures have °F and feet beside them, for whoever works with those. */
  units: Units
  /** What the walk was told of people who can not stand cold or heat; null: it did not ask. */
  vulnerable: boolean | null
}

const URGENCY: Record<Severity, string> = {
  0: 'No visit needed now',
  1: 'Visit in the next days',
  2: 'Urgent: today',
  3: 'Emergency: {emergency}, the home is to be left',
}

const NOT_SAID = 'not said'

/** The page from what is known; unknown things are said to be unknown, never left out. */
export function makeBrief(parts: BriefParts): Brief {
  return {
    title: `Brief for the technician: ${parts.flow.title}`,
    sections: [
      { heading: 'Urgency', lines: urgencyLines(parts) },
      { heading: 'Equipment', lines: equipmentLines(parts) },
      { heading: 'Seen, heard and tried', lines: walkLines(parts) },
      { heading: 'Start-up as timed', lines: watchLines(parts) },
      { heading: 'Starts and resets', lines: episodeLines(parts) },
      { heading: 'Filter', lines: filterLines(parts) },
    ],
  }
}

function urgencyLines({ outcome, household, roomF, units, startedAt, vulnerable }: BriefParts): string[] {
  // One yes is enough: of the home or of the person in front of the unit.
  const isVulnerable = vulnerable === true || (household?.vulnerable ?? vulnerable)
  return [
    outcome?.severity === undefined
      ? 'The self-check is not finished'
      : fillEmergency(URGENCY[outcome.severity], household?.emergencyNumber),
    `Self-check begun: ${startedAt}`,
    `Room temperature: ${roomF === null ? NOT_SAID : roomInWords(roomF, units)}`,
    `Someone who can not stand cold or heat: ${isVulnerable === null ? NOT_SAID : isVulnerable ? 'yes' : 'none noted'}`,
  ]
}

// As exactly as it was typed: to a tenth, unlike what the model reckons with.
function roomInWords(fahrenheit: number, units: Units): string {
  const celsius = Math.round(((fahrenheit - 32) * 50) / 9) / 10
  return units === 'us' ? `${fahrenheit} °F` : `${celsius} °C (${fahrenheit} °F)`
}

function elevationInWords(feet: number, units: Units): string {
  const us = heightInWords(feet, 'us')
  return units === 'us' ? us : `${heightInWords(feet, units)} (${us})`
}

function equipmentLines({ household, system, units }: BriefParts): string[] {
  if (household === null || system === null) return ['Equipment: not described']
  const { heat, cool } = system
  const lines = [`Home: ${homeInWords(household)}`, `System: ${system.name}, ${system.delivery}`]
  if (heat !== undefined)
    lines.push(
      line('Heat', [
        heat.source.replaceAll('-', ' '),
        heat.inputBtuh && `${numberInWords(heat.inputBtuh)} Btu/h in`,
        heat.outputBtuh && `${numberInWords(heat.outputBtuh)} Btu/h out`,
        heat.installed && `installed ${heat.installed}`,
      ]),
    )
  if (cool !== undefined)
    lines.push(
      line('Cooling', [
        cool.source.replaceAll('-', ' '),
        cool.tons && `${cool.tons} tons`,
        cool.installed && `installed ${cool.installed}`,
      ]),
    )
  if (household.elevationFt) lines.push(`Elevation: ${elevationInWords(household.elevationFt, units)}`)
  return lines
}

function line(name: string, parts: (string | number | undefined)[]): string {
  return `${name}: ${parts.filter((part) => part).join(', ')}`
}

function walkLines({ flow, taken, outcome }: BriefParts): string[] {
  const lines = taken.flatMap((step) => {
    const node = findNode(flow, step.node)
    // Hazards that were denied are one line, not ten.
    if (node === null || (node.kind === 'gate' && step.answer === 'no')) return []
    const what = node.kind === 'check' ? (doLine(node) ?? node.text) : firstSentence(node.text)
    return [`+${step.minute} min · ${what} → ${step.text}`]
  })
  const denied = deniedHazards(flow, taken)
  if (denied.length > 0)
    lines.unshift(`Asked, and the answer was no: ${denied.map((hazard) => HAZARD_WORDS[hazard]).join('; ')}`)
  if (outcome !== null) lines.push(`Ended at: ${firstSentence(outcome.text)}`)
  return lines.length > 0 ? lines : ['Nothing answered yet']
}

/** What was asked and denied, but for what was met as well, before or after. */
function deniedHazards(flow: Flow, taken: readonly TakenStep[]): Hazard[] {
  const denied = taken.filter(({ answer }) => answer === 'no').map(({ node }) => findNode(flow, node)?.hazard)
  const met = taken.reduce((set, { node, answer }) => set | metBy(findNode(flow, node), answer), 0)
  return HAZARDS.filter((hazard) => denied.includes(hazard) && (met & bit(hazard)) === 0)
}

/** The hazards that an answer says are there, or that may have come where something changed. */
function metBy(node: GuideNode | null, id: string): number {
  if (id === CHANGED) return MAY_HAVE_COME
  const answer = node?.answers?.find((each) => each.id === id)
  return node && answer ? hazardsAdmitted({ node }, answer) : 0
}

function doLine(node: GuideNode): string | null {
  return (
    node.text
      .split('\n')
      .find((each) => each.startsWith('Do: '))
      ?.slice(4) ?? null
  )
}

function firstSentence(text: string): string {
  const [first = text, second] = text.split(/(?<=[.?!])\s+/)
  // A signal word alone says nothing.
  return second !== undefined && /^(DANGER|WARNING)\.$/.test(first) ? second : first
}

function watchLines({ watched, watchedEvents }: BriefParts): string[] {
  if (watched === null) return ['Not timed']
  const times = watchedEvents.map(({ event, second }) => `${second} s ${event}`).join(' · ')
  if (watched.kind === 'broken') return [`Times could not be read: ${watched.because}`]
  if (watched.kind === 'stop') return [times, `Stopped at a bang, ${watched.at} s after the call`]
  const families = watched.families.map((family) => family.say.replace(/\.$/, ''))
  return [
    times,
    families.length > 0
      ? `Fits: ${families.join(' | ')}`
      : watched.normal
        ? 'As expected'
        : 'Too little seen to lean either way',
  ]
}

const IMPORTED = 'brought from a file: what was tried before is not known'

function episodeLines({ episode, events }: BriefParts): string[] {
  const used = { no: 'not used', yes: 'used', unknown: 'not known, so taken as used' }
  const lines = [`The one start: ${episode === null ? used.unknown : used[episode.resetUsed]}`]
  if (episode?.tripped === 'yes') lines.push('It tripped again after a start')
  if (episode !== null && episode.closedByHazard !== 'no') lines.push('A hazard was met and is not cleared')
  return [
    ...lines,
    ...events.map(({ on, kind }) => `${on} · ${kind === 'imported' ? IMPORTED : kind.replaceAll('-', ' ')}`),
  ]
}

function filterLines({ filters }: BriefParts): string[] {
  if (filters.length === 0) return ['No filter described']
  return filters.map(({ filter, loadedFraction, lastChangedOn }) => {
    const { widthIn, heightIn, depthIn } = filter.nominal
    const merv = filter.merv === undefined ? '' : ` MERV ${filter.merv}`
    const load = loadedFraction === null ? 'load not known' : `about ${Math.round(loadedFraction * 100)} % loaded`
    return `${widthIn}x${heightIn}x${depthIn} ${filter.medium}${merv}, ${load}, last changed ${lastChangedOn ?? 'not recorded'}`
  })
}

/** The same page as plain text, to copy or send. */
export function briefText(brief: Brief): string {
  const parts = brief.sections.map(({ heading, lines }) =>
    [heading.toUpperCase(), ...lines.map((each) => `  ${each}`)].join('\n'),
  )
  return `${brief.title}\n\n${parts.join('\n\n')}\n`
}
