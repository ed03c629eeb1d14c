import { describe, expect, it } from 'vitest'
import { getFlow } from '@/content/guide/flows'
import { STARTUP } from '@/content/guide/startup'
import { CHANGED } from '@/lib/guide/address'
import { type BriefParts, briefText, makeBrief } from '@/lib/guide/brief'
import { episodeOn } from '@/lib/guide/episode'
import { HAZARD_WORDS } from '@/lib/guide/hazard-words'
import { replay } from '@/lib/guide/replay'
import { type TimedEvent, watchStartup } from '@/lib/guide/startup-watcher'
import { HAZARDS } from '@/lib/guide/types'
import { aHousehold } from '@/tests/support/a-household'
import { guideNode } from '@/tests/support/a-small-guide'
import { HALL } from '@/tests/support/plan-of'
import { calmWalk } from '@/tests/support/walks'

const FACTS = {
  heatSource: 'gas',
  delivery: 'ducted',
  systems: 'one',
  tenure: 'own',
  vulnerable: 'no',
  resetUsed: 'no',
}

function parts(): BriefParts {
  const flow = getFlow('no-heat')
  const walk = calmWalk(flow, FACTS, { result: 'dies', filter: 'changed' })
  const seen = replay({ flow, facts: FACTS, walk, now: walk.startedAt + walk.steps.length })
  if (seen.kind !== 'at') throw new Error(seen.kind)
  const events = [{ kind: 'start-spent', on: '2026-11-25', at: 1 }] as const
  const watchedEvents = [
    { event: 'calls', second: 0 },
    { event: 'light', second: 50 },
    { event: 'silence', second: 54 },
  ] as const
  return {
    flow,
    startedAt: '25 November 2026, 21:04',
    household: null,
    system: null,
    taken: seen.taken,
    outcome: seen.node,
    watched: watchStartup(watchedEvents, STARTUP),
    watchedEvents,
    episode: episodeOn(events, '2026-11-25'),
    events,
    filters: [
      {
        filter: HALL,
        loadedFraction: 1.12,
        lastChangedOn: '2026-02-01',
      },
    ],
    roomF: 61,
    units: 'us',
    vulnerable: false,
  }
}

describe('the brief', () => {
  it('says how urgent it is, what was denied, what was done and seen, with minutes', () => {
    const text = briefText(makeBrief(parts()))
    expect(text).toContain('Urgent: today')
    expect(text).toContain('Room temperature: 61 °F')
    expect(text).toMatch(/Asked, and the answer was no: a gas smell; a CO alarm, or people unwell; smoke/)
    expect(text).toMatch(/\+\d+ min · Slide the filter .* → It was dark: a new one is in/)
    expect(text).toMatch(/→ A whoosh, and it is out in seconds/)
    expect(text).toContain('50 s light · 54 s silence')
    expect(text).toContain('The one start: used')
    expect(text).toContain('16x25x1 pleated MERV 8, about 112 % loaded, last changed 2026-02-01')
  })

  it('says what is not known instead of leaving it out', () => {
    const text = briefText(
      makeBrief({
        ...parts(),
        taken: [],
        outcome: null,
        watched: null,
        episode: null,
        events: [],
        filters: [],
        roomF: null,
      }),
    )
    for (const line of [
      'The self-check is not finished',
      'Room temperature: not said',
      'Equipment: not described',
      'Not timed',
      'taken as used',
      'No filter described',
    ])
      expect(text).toContain(line)
  })

  it('says that someone can not stand the cold as soon as the home or the walk said so', () => {
    const line = (vulnerable: boolean | null) =>
      briefText(makeBrief({ ...parts(), vulnerable })).match(/can not stand cold or heat: (.*)/)?.[1]
    expect([line(true), line(false), line(null)]).toEqual(['yes', 'none noted', 'not said'])
    const household = aHousehold({ vulnerable: true })
    expect(briefText(makeBrief({ ...parts(), household, vulnerable: false }))).toContain('cold or heat: yes')
    expect(briefText(makeBrief({ ...parts(), household: aHousehold(), vulnerable: true }))).toContain('heat: yes')
  })

  it('fits one page', () => {
    expect(briefText(makeBrief(parts())).split('\n').length).toBeLessThan(66)
  })

  it('never names a part or a price', () => {
    expect(briefText(makeBrief(parts()))).not.toMatch(/igniter|flame sensor|capacitor|\$/i)
  })
})

describe('the brief’s sections', () => {
  const linesOf = (heading: string, change: Partial<BriefParts>) =>
    makeBrief({ ...parts(), ...change }).sections.find((section) => section.heading === heading)?.lines

  it('stand in one order, each under its heading, indented', () => {
    const brief = makeBrief({ ...parts(), taken: [], outcome: null })
    expect(brief.sections.map(({ heading }) => heading)).toEqual([
      'Urgency',
      'Equipment',
      'Seen, heard and tried',
      'Start-up as timed',
      'Starts and resets',
      'Filter',
    ])
    const text = briefText(brief)
    expect(text.startsWith(`${brief.title}\n\nURGENCY\n  The self-check is not finished\n  Self-check begun: 25`)).toBe(
      true,
    )
    expect(text).toContain(
      '\n\nEQUIPMENT\n  Equipment: not described\n\nSEEN, HEARD AND TRIED\n  Nothing answered yet\n\n',
    )
    expect(text.endsWith('last changed 2026-02-01\n')).toBe(true)
  })

  it('tell the urgency of where the walk ended', () => {
    const outcome = parts().outcome
    if (outcome === null) throw new Error('no outcome')
    const said = ([0, 1, 2, 3] as const).map(
      (severity) => linesOf('Urgency', { outcome: { ...outcome, severity } })?.[0],
    )
    expect(said).toEqual([
      'No visit needed now',
      'Visit in the next days',
      'Urgent: today',
      'Emergency: 911, the home is to be left',
    ])
    const abroad = aHousehold({ emergencyNumber: '112' })
    expect(linesOf('Urgency', { outcome: { ...outcome, severity: 3 }, household: abroad })?.[0]).toBe(
      'Emergency: 112, the home is to be left',
    )
  })

  it('describe the equipment by what is known of it, and nothing else', () => {
    const household = aHousehold({ elevationFt: 5280 })
    const [system] = household.systems
    if (!system) throw new Error('no system')
    const known = {
      ...system,
      heat: { source: 'gas-furnace', inputBtuh: 80_000, outputBtuh: 64_000, installed: 2012 },
      cool: { source: 'central-ac', tons: 3, installed: 2015 },
    } as typeof system
    expect(linesOf('Equipment', { household, system: known })).toEqual([
      'Home: Larkspur Court 2',
      'System: Main system, ducted',
      'Heat: gas furnace, 80,000 Btu/h in, 64,000 Btu/h out, installed 2012',
      'Cooling: central ac, 3 tons, installed 2015',
      'Elevation: 5,280 feet',
    ])
    const { heat: _heat, cool: _cool, ...bare } = system
    expect(linesOf('Equipment', { household: aHousehold(), system: bare })).toEqual([
      'Home: Larkspur Court 2',
      'System: Main system, ducted',
    ])
    const little = { ...bare, heat: { source: 'oil-boiler' as const }, cool: { source: 'heat-pump' as const } }
    expect(linesOf('Equipment', { household, system: little })?.slice(2, 4)).toEqual([
      'Heat: oil boiler',
      'Cooling: heat pump',
    ])
    // A home whose system is not chosen, and the other way round, is not described.
    expect(linesOf('Equipment', { household, system: null })).toEqual(['Equipment: not described'])
    expect(linesOf('Equipment', { household: null, system })).toEqual(['Equipment: not described'])
  })

  it('of a metric home tell its own units, with °F and feet beside them', () => {
    const household = aHousehold({ elevationFt: 5280, units: 'metric' })
    const [system = null] = household.systems
    const lines = (heading: string, roomF: number) => linesOf(heading, { household, system, roomF, units: 'metric' })
    expect(lines('Equipment', 61)?.at(-1)).toBe('Elevation: 1,609 metres (5,280 feet)')
    expect([60.8, 61.7, 32, -4].map((roomF) => lines('Urgency', roomF)?.[2])).toEqual([
      'Room temperature: 16 °C (60.8 °F)',
      'Room temperature: 16.5 °C (61.7 °F)',
      'Room temperature: 0 °C (32 °F)',
      'Room temperature: -20 °C (-4 °F)',
    ])
    expect(linesOf('Urgency', { roomF: null, units: 'metric' })?.[2]).toBe('Room temperature: not said')
  })

  it('tell the walk without the hazards that were denied, its end last', () => {
    const lines = linesOf('Seen, heard and tried', {}) ?? []
    expect(lines.filter((line) => line.startsWith('Asked, and the answer was no: '))).toHaveLength(1)
    expect(lines[0]).toMatch(/^Asked/)
    expect(lines.slice(1, -1).every((line) => /^\+\d+ min · .+ → .+/.test(line))).toBe(true)
    expect(lines.some((line) => /smell gas.*→ No/i.test(line))).toBe(false)
    expect(lines.some((line) => /· (DANGER|WARNING)\. →/.test(line))).toBe(false)
    expect(lines.at(-1)).toMatch(/^Ended at: .+/)
    expect(lines.at(-1)).not.toMatch(/^Ended at: (DANGER|WARNING)\.$/)
    // One line for each answer but the hazards that were denied, and one for those together.
    const { flow, taken } = parts()
    const isDenied = ({ node, answer }: (typeof taken)[number]) =>
      answer === 'no' && flow.nodes.some(({ id, kind }) => id === node && kind === 'gate')
    expect(lines).toHaveLength(taken.filter((step) => !isDenied(step)).length + 2)
    const denied = taken.filter(isDenied).map(({ node }) => flow.nodes.find(({ id }) => id === node)?.hazard)
    expect(lines[0]?.split('; ')).toHaveLength(new Set(denied).size)
    const smelled = taken.map((step) => (step.node === 'gas' ? { ...step, answer: 'yes', text: 'Yes' } : step))
    const met = linesOf('Seen, heard and tried', { taken: smelled }) ?? []
    expect(met).toHaveLength(lines.length + 1)
    expect(met[1]).toMatch(/^\+0 min · .+ → Yes$/)
    const open = linesOf('Seen, heard and tried', { outcome: null }) ?? []
    expect(open).toEqual(lines.slice(0, -1))
    expect(linesOf('Seen, heard and tried', { outcome: null, taken: [] })).toEqual(['Nothing answered yet'])
  })

  it('tell a question by its first sentence, and a check by what was to be done', () => {
    const nodes = [
      guideNode('cover', 'question', { text: 'Is a cover off? Look from where you stand.' }),
      guideNode('filter', 'check', {
        text: 'Only if: it is cool. Dry too.\nDo: Slide the filter out. Hold it up.\nTime: 2 min.',
      }),
      guideNode('bare', 'check', { text: 'Wait a while. Then look.' }),
    ]
    const taken = nodes.map(({ id: node }, minute) => ({ node, answer: 'done', minute, text: 'Done' }))
    const small = { ...parts().flow, nodes }
    expect(linesOf('Seen, heard and tried', { flow: small, taken, outcome: null })).toEqual([
      '+0 min · Is a cover off? → Done',
      '+1 min · Slide the filter out. Hold it up. → Done',
      '+2 min · Wait a while. Then look. → Done',
    ])
  })

  it('never tell a hazard as denied that was met, before or after somebody denied it', () => {
    const flow = parts().flow
    const denied = (...steps: [string, string][]) => {
      const taken = steps.map(([node, answer], minute) => ({ node, answer, minute, text: answer }))
      const line = linesOf('Seen, heard and tried', { taken, outcome: null })?.[0] ?? ''
      return line.startsWith('Asked, and the answer was no: ') ? line.slice(30).split('; ') : []
    }
    const gates = flow.nodes.filter(({ kind }) => kind === 'gate').map(({ id }): [string, string] => [id, 'no'])
    const all = Object.values(HAZARD_WORDS)
    expect(denied(...gates)).toEqual(all)
    expect(new Set(all).size).toBe(HAZARDS.length)
    expect(denied(['gas', 'yes'])).toEqual([])
    expect(denied(['gas', 'no'], ['co', 'unsure'])).toEqual(['a gas smell'])
    // Denied at first, and there once the equipment had run.
    expect(denied(['gas', 'no'], ['co', 'no'], ['start', 'done'], ['again-co', 'yes'])).toEqual(['a gas smell'])
    expect(denied(['again-co', 'yes'], ['co', 'no'], ['gas', 'no'])).toEqual(['a gas smell'])
    // A breaker that is hot is a fire, though no gate asked about it then.
    expect(denied(['fire', 'no'], ['oil', 'no'], ['start-breaker', 'bad'])).toEqual(['spilled oil'])
    // What changed may be gas, CO or smoke.
    expect(denied(...gates, ['filter', CHANGED])).toEqual(all.slice(3))
    // Neither denied nor met.
    expect(denied(['gas', 'no'], ['oil', 'later'])).toEqual(['a gas smell'])
    expect(denied(['nowhere', 'no'], ['presence', 'no'], ['gas', 'nothing'])).toEqual([])
  })

  it('say the first sentence of where it ended, and not a signal word alone', () => {
    const outcome = parts().outcome
    if (outcome === null) throw new Error('no outcome')
    const ended = (text: string) => linesOf('Seen, heard and tried', { outcome: { ...outcome, text } })?.at(-1)
    expect(ended('DANGER. Leave now. Call 911.')).toBe('Ended at: Leave now.')
    expect(ended('WARNING. Turn it off.')).toBe('Ended at: Turn it off.')
    expect(ended('DANGER.\n\nLeave now.  Call 911.')).toBe('Ended at: Leave now.')
    expect(ended('WARNING.')).toBe('Ended at: WARNING.')
    expect(ended('Is it cold? Call today.')).toBe('Ended at: Is it cold?')
    expect(ended('A WARNING. Turn it off.')).toBe('Ended at: A WARNING.')
  })

  it('tell what the timed start-up fits, or that it tells nothing', () => {
    const timed = (events: readonly TimedEvent[]) =>
      linesOf('Start-up as timed', { watched: watchStartup(events, STARTUP), watchedEvents: events })
    expect(linesOf('Start-up as timed', { watched: null })).toEqual(['Not timed'])
    const [times, fits] = linesOf('Start-up as timed', {}) ?? []
    expect(times).toBe('0 s calls · 50 s light · 54 s silence')
    expect(fits).toMatch(/^Fits: It may be [^|]+[^.|] \| It may be .+[^.]$/)
    expect(timed([{ event: 'calls', second: 0 }])?.[1]).toBe('Too little seen to lean either way')
    const good = [
      ['calls', 0],
      ['hum', 5],
      ['light', 50],
      ['warm-air', 95],
    ] as const
    expect(timed(good.map(([event, second]) => ({ event, second })))?.[1]).toBe('As expected')
    expect(timed([{ event: 'bang', second: 7 }])).toEqual(['7 s bang', 'Stopped at a bang, 7 s after the call'])
    expect(timed([{ event: 'calls', second: -1 }])).toEqual([
      'Times could not be read: A time must be between 0 and 7200 seconds.',
    ])
  })

  it('tell the one start, a trip and a hazard that is not cleared', () => {
    const events = [
      { kind: 'start-spent', on: '2026-11-25', at: 1 },
      { kind: 'trip', on: '2026-11-25', at: 2 },
      { kind: 'hazard-stop', on: '2026-11-25', at: 3 },
    ] as const
    expect(linesOf('Starts and resets', { events, episode: episodeOn(events, '2026-11-25') })).toEqual([
      'The one start: used',
      'It tripped again after a start',
      'A hazard was met and is not cleared',
      '2026-11-25 · start spent',
      '2026-11-25 · trip',
      '2026-11-25 · hazard stop',
    ])
    const visit = [{ kind: 'technician-visit', on: '2026-11-20', at: 1 }] as const
    expect(linesOf('Starts and resets', { events: visit, episode: episodeOn(visit, '2026-11-25') })).toEqual([
      'The one start: not used',
      '2026-11-20 · technician visit',
    ])
    const brought = [{ kind: 'imported', on: '2026-11-25', at: 1 }] as const
    expect(linesOf('Starts and resets', { events: brought, episode: episodeOn(brought, '2026-11-25') })).toEqual([
      'The one start: used',
      '2026-11-25 · brought from a file: what was tried before is not known',
    ])
    expect(linesOf('Starts and resets', { events: [], episode: null })).toEqual([
      'The one start: not known, so taken as used',
    ])
  })

  it('say of each filter what is not known of it', () => {
    const [known] = parts().filters
    if (!known) throw new Error('no filter')
    const { merv: _merv, ...unrated } = known.filter
    const states = [known, { filter: unrated, loadedFraction: null, lastChangedOn: null }]
    expect(linesOf('Filter', { filters: states })).toEqual([
      '16x25x1 pleated MERV 8, about 112 % loaded, last changed 2026-02-01',
      '16x25x1 pleated, load not known, last changed not recorded',
    ])
  })
})
