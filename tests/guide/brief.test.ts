import { describe, expect, it } from 'vitest'
import { getFlow } from '@/content/guide/flows'
import { STARTUP } from '@/content/guide/startup'
import { type BriefParts, briefText, makeBrief } from '@/lib/guide/brief'
import { episodeOn } from '@/lib/guide/episode'
import { replay } from '@/lib/guide/replay'
import { watchStartup } from '@/lib/guide/startup-watcher'
import { aHousehold } from '@/tests/support/a-household'
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
        filter: {
          id: 'hall',
          system: 'main',
          place: 'wall-grille',
          nominal: { widthIn: 16, heightIn: 25, depthIn: 1 },
          medium: 'pleated',
          merv: 8,
        },
        loadedFraction: 1.12,
        lastChangedOn: '2026-02-01',
      },
    ],
    roomF: 61,
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
