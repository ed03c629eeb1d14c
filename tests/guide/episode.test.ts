import { describe, expect, it } from 'vitest'
import { type EpisodeEvent, type EpisodeKind, episodeFacts, episodeOn } from '@/lib/guide/episode'
import { guideFacts } from '@/lib/guide/household-facts'

let at = 0
function event(kind: EpisodeKind, on = '2026-11-20'): EpisodeEvent {
  at += 1
  return { kind, on, at }
}

const TODAY = '2026-11-25'

describe('the one start of an episode', () => {
  it('is unknown with nothing recorded, so that it is asked', () => {
    expect(episodeOn([], TODAY)).toEqual({ resetUsed: 'unknown', tripped: 'no', closedByHazard: 'no', refillsOn: null })
  })

  it('is spent by one start, on any phone, and stays spent', () => {
    expect(episodeOn([event('trouble-began'), event('start-spent')], TODAY)).toMatchObject({
      resetUsed: 'yes',
      refillsOn: '2027-11-20',
    })
  })

  it('is not given back by new trouble', () => {
    expect(episodeOn([event('start-spent'), event('trouble-began', '2026-11-24')], TODAY).resetUsed).toBe('yes')
  })

  it('is given back by a technician', () => {
    expect(episodeOn([event('start-spent'), event('technician-visit')], TODAY).resetUsed).toBe('no')
  })

  it('is asked again twelve months after the last fault, not a day before', () => {
    const events = [event('start-spent', '2025-11-25')]
    expect(episodeOn(events, '2026-11-24').resetUsed).toBe('yes')
    expect(episodeOn(events, '2026-11-25').resetUsed).toBe('unknown')
    expect(episodeOn([...events, event('trouble-began', '2026-03-01')], '2026-11-25').resetUsed).toBe('yes')
  })

  it('is spent again by a start after it filled up', () => {
    expect(episodeOn([event('start-spent', '2024-01-01'), event('start-spent', '2026-11-20')], TODAY)).toMatchObject({
      resetUsed: 'yes',
      tripped: 'no',
    })
  })

  it('counts as used after an import', () => {
    expect(episodeOn([event('imported')], TODAY).resetUsed).toBe('yes')
  })

  it('knows a second trip from the first', () => {
    expect(episodeOn([event('trip')], TODAY).tripped).toBe('no')
    expect(episodeOn([event('trip'), event('start-spent'), event('trip')], TODAY).tripped).toBe('yes')
    expect(episodeOn([event('start-spent'), event('trip'), event('technician-visit')], TODAY).tripped).toBe('no')
  })

  it('does not look at what is still to come', () => {
    expect(episodeOn([event('start-spent', '2026-11-26')], TODAY).resetUsed).toBe('unknown')
  })
})

describe('a hazard once seen', () => {
  it('stays over time and over a visit, until a clearance', () => {
    const seen = [event('hazard-leave', '2020-01-01'), event('technician-visit', '2020-01-02')]
    expect(episodeOn(seen, TODAY).closedByHazard).toBe('leave')
    expect(episodeOn([...seen, event('clearance')], TODAY).closedByHazard).toBe('no')
  })

  it('is never lowered by a lesser one', () => {
    expect(episodeOn([event('hazard-leave'), event('hazard-stop')], TODAY).closedByHazard).toBe('leave')
    expect(episodeOn([event('hazard-stop'), event('hazard-leave')], TODAY).closedByHazard).toBe('leave')
  })
})

describe('facts for a walk', () => {
  const home = {
    tenure: 'let' as const,
    vulnerable: true,
    systems: [
      { id: 'a', name: 'Upstairs', delivery: 'ducted' as const, heat: { source: 'dual-fuel' as const } },
      { id: 'b', name: 'Downstairs', delivery: 'hydronic' as const, heat: { source: 'oil-boiler' as const } },
    ],
  }

  it('name the chosen system, and ask about a backup that may burn fuel', () => {
    expect(guideFacts(home, 'a', null)).toMatchObject({
      heatSource: 'heat-pump',
      delivery: 'ducted',
      systems: 'several',
    })
    expect(guideFacts(home, 'b', null)).toMatchObject({ heatSource: 'oil', delivery: 'hydronic' })
  })

  it('take nothing as known with several systems and none chosen', () => {
    expect(guideFacts(home, null, null)).toMatchObject({
      heatSource: 'unknown',
      delivery: 'unknown',
      tenure: 'let',
      vulnerable: 'yes',
    })
  })

  it('carry the episode, signed in or not', () => {
    const episode = episodeOn([event('start-spent'), event('hazard-stop')], TODAY)
    expect(episodeFacts(episode)).toEqual({ resetUsed: 'yes', tripped: 'no', hazardSeen: 'stop' })
    expect(guideFacts(null, null, episode)).toEqual({ resetUsed: 'yes', tripped: 'no', hazardSeen: 'stop' })
    expect(guideFacts(null, null, null)).toEqual({})
  })
})
