import { describe, expect, it } from 'vitest'
import { type EpisodeEvent, type EpisodeKind, episodeFacts, episodeOn, lastMetOn } from '@/lib/guide/episode'
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

  it('reads what happened in the order it happened, however it was written down', () => {
    const [spent, visit] = [event('start-spent'), event('technician-visit')]
    expect(episodeOn([visit, spent], TODAY).resetUsed).toBe('no')
    const [first, then] = [event('technician-visit'), event('start-spent')]
    expect(episodeOn([then, first], TODAY).resetUsed).toBe('yes')
  })

  it('and its trips fill up together, twelve months after the last fault to the day', () => {
    const old = [event('trip', '2024-06-01'), event('start-spent', '2024-06-01'), event('trip', '2024-06-01')]
    // A year without trouble: the trip of the new one is a first trip.
    expect(episodeOn([...old, event('trip', '2025-06-01')], '2025-06-01')).toMatchObject({
      resetUsed: 'unknown',
      tripped: 'no',
    })
    expect(episodeOn([...old, event('trip', '2025-05-31')], '2025-06-01')).toMatchObject({
      resetUsed: 'yes',
      tripped: 'yes',
    })
    expect(episodeOn([...old, event('start-spent', '2025-06-01')], '2025-06-02')).toMatchObject({
      resetUsed: 'yes',
      tripped: 'no',
      refillsOn: '2026-06-01',
    })
  })

  it('is put off by faults only: a visit or a clearance is none', () => {
    const start = event('start-spent', '2025-11-25')
    expect(episodeOn([start, event('clearance', '2026-06-01')], TODAY).resetUsed).toBe('unknown')
    const visited = [event('start-spent', '2026-01-01'), event('technician-visit', '2026-06-01')]
    expect(episodeOn(visited, TODAY)).toMatchObject({ resetUsed: 'no', refillsOn: null })
    expect(episodeOn([event('trouble-began')], TODAY)).toMatchObject({ resetUsed: 'unknown', refillsOn: null })
  })

  it('knows the last day that a visit must come after', () => {
    expect(lastMetOn([])).toBeNull()
    expect(lastMetOn([event('trouble-began'), event('technician-visit'), event('clearance')])).toBeNull()
    for (const kind of ['start-spent', 'trip', 'hazard-leave', 'hazard-stop', 'imported'] as const)
      expect(lastMetOn([event('trip', '2026-01-01'), event(kind, '2026-02-03'), event('clearance')])).toBe('2026-02-03')
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
