import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { GUIDE_SOURCES } from '@/content/guide/sources'
import { STARTUP } from '@/content/guide/startup'
import { STARTUP_EVENTS, type StartupEvent, type TimedEvent, watchStartup } from '@/lib/guide/startup-watcher'
import { askFaults } from '@/lib/guide/words'

function times(...pairs: [StartupEvent, number][]): TimedEvent[] {
  return pairs.map(([event, second]) => ({ event, second }))
}

function familiesOf(...pairs: [StartupEvent, number][]): string[] {
  const watched = watchStartup(times(...pairs), STARTUP)
  if (watched.kind !== 'watched') throw new Error(watched.kind)
  return watched.families.map((family) => family.id)
}

/** Gaps between events made into times. */
function timed(pairs: readonly [StartupEvent, number][]): TimedEvent[] {
  let second = 0
  return pairs.map(([event, gap]) => {
    second += gap
    return { event, second }
  })
}

// Seconds and minutes as the families of the safety basis tell them apart: flame proving ends within 10 s,
// before the fan's delay of 25 s at least; a limit opens after minutes.
describe('the start-up watcher', () => {
  it('finds nothing in a start as the manuals state it', () => {
    const watched = watchStartup(times(['calls', 0], ['hum', 5], ['light', 50], ['warm-air', 95]), STARTUP)
    expect(watched).toMatchObject({ kind: 'watched', normal: true, families: [] })
    if (watched.kind === 'watched')
      expect(watched.rows.map((row) => row.fits)).toEqual(['within', 'within', 'within', 'within'])
  })

  it('does not take a room that got warm for a fault', () => {
    expect(familiesOf(['calls', 0], ['hum', 5], ['light', 50], ['warm-air', 95], ['silence', 700])).toEqual([])
  })

  it('leans to flame proving when it dies within seconds', () => {
    expect(familiesOf(['calls', 0], ['hum', 5], ['light', 50], ['silence', 54], ['starts-over', 80])).toEqual([
      'flame-proving',
      'fuel',
    ])
  })

  it('leans to the air path or a limit on felt bursts of minutes', () => {
    expect(
      familiesOf(
        ['calls', 0],
        ['hum', 5],
        ['light', 50],
        ['warm-air', 95],
        ['cool-air', 300],
        ['light', 500],
        ['warm-air', 540],
        ['cool-air', 720],
      ),
    ).toEqual(['limit', 'air-path'])
  })

  it('names both, and pressure, where they overlap', () => {
    expect(familiesOf(['calls', 0], ['hum', 5], ['light', 50], ['silence', 80])).toEqual([
      'flame-proving',
      'limit',
      'venting',
    ])
  })

  it('leans to venting or ignition with a hum and no light', () => {
    expect(familiesOf(['calls', 0], ['hum', 3], ['silence', 300])).toEqual(['venting', 'ignition'])
  })

  it('leans to power or thermostat with nothing at all', () => {
    expect(familiesOf(['silence', 300])).toEqual(['power', 'thermostat'])
    expect(familiesOf(['calls', 0], ['silence', 300])).toEqual(['control', 'safety-wait'])
  })

  it('stops at a bang, whatever else was seen', () => {
    const any = fc.array(fc.tuple(fc.constantFrom(...STARTUP_EVENTS), fc.nat(20)), { maxLength: 20 })
    fc.assert(
      fc.property(any, fc.nat(20), (pairs, place) => {
        const events: [StartupEvent, number][] = pairs.toSpliced(place, 0, ['bang', 0])
        expect(watchStartup(timed(events), STARTUP).kind).toBe('stop')
      }),
    )
  })

  it('says first that bursts and a flame that dies point to different places, and names two families or none', () => {
    const any = fc.array(
      fc.tuple(fc.constantFrom(...STARTUP_EVENTS.filter((event) => event !== 'bang')), fc.nat(400)),
      { maxLength: 15 },
    )
    fc.assert(
      fc.property(any, (pairs) => {
        const watched = watchStartup(timed(pairs), STARTUP)
        if (watched.kind !== 'watched') throw new Error(watched.kind)
        expect(watched.first).toBe(STARTUP.bursts)
        expect(watched.families).not.toHaveLength(1)
        for (const family of watched.families) expect(family.say).toMatch(/^It may be/)
      }),
    )
  })

  it('refuses times that can not be', () => {
    for (const events of [
      times(['calls', 5], ['hum', 4]),
      times(['calls', -1]),
      times(['calls', Number.NaN]),
      times(['calls', 9000]),
    ])
      expect(watchStartup(events, STARTUP).kind).toBe('broken')
  })

  it('has a source for every row and family, and asks nothing that the guide may not ask', () => {
    const ids = GUIDE_SOURCES.map((source) => source.id)
    for (const part of [...STARTUP.rows, ...STARTUP.families]) for (const id of part.sources) expect(ids).toContain(id)
    const texts = [
      STARTUP.bursts,
      ...STARTUP.rows.map((row) => row.note),
      ...STARTUP.families.flatMap((family) => [family.say, family.overlaps]),
    ]
    for (const text of texts) expect([...askFaults(text, [])]).toEqual([])
  })
})
