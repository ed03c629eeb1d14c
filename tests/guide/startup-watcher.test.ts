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

  it('leans to the control or a wait for safety where it called and nothing came, and to nothing while it is watched', () => {
    expect(familiesOf(['calls', 0], ['silence', 300])).toEqual(['control', 'safety-wait'])
    expect(familiesOf(['calls', 0])).toEqual([])
    expect(familiesOf(['starts-over', 30])).toEqual([])
    expect(familiesOf(['hum', 0])).toEqual([])
    expect(familiesOf(['calls', 0], ['hum', 3], ['starts-over', 60])).toEqual(['venting', 'ignition'])
    expect(familiesOf(['calls', 0], ['hum', 3])).toEqual([])
  })

  it('takes a flame for one that dies up to 15 seconds, and for something between after that', () => {
    const ends = (second: number) => familiesOf(['calls', 0], ['hum', 5], ['light', 50], ['silence', second])
    expect(ends(65)).toEqual(['flame-proving', 'fuel'])
    expect(ends(66)).toEqual(['flame-proving', 'limit', 'venting'])
    // Warm air within seconds is warmth of a flame that held.
    expect(familiesOf(['calls', 0], ['light', 50], ['warm-air', 55], ['silence', 60])).toEqual([
      'flame-proving',
      'limit',
      'venting',
    ])
  })

  it('takes one warm spell for done from 45 seconds on, and for a burst where it then starts over or turns cool', () => {
    const warm = (...after: [StartupEvent, number][]) =>
      familiesOf(['calls', 0], ['light', 100], ['warm-air', 120], ...after)
    expect(warm(['silence', 145])).toEqual([])
    expect(warm(['silence', 144])).toEqual(['flame-proving', 'limit', 'venting'])
    expect(warm(['starts-over', 145])).toEqual(['limit', 'air-path'])
    expect(warm(['starts-over', 144])).toEqual(['flame-proving', 'limit', 'venting'])
    expect(warm(['cool-air', 130])).toEqual(['limit', 'air-path'])
    // Still warm: nothing has ended.
    expect(warm()).toEqual([])
  })

  it('takes two warm spells for bursts, each counted from its own light', () => {
    const twice: [StartupEvent, number][] = [
      ['calls', 0],
      ['light', 50],
      ['warm-air', 60],
      ['silence', 80],
      ['light', 200],
      ['warm-air', 210],
      ['silence', 230],
    ]
    expect(familiesOf(...twice)).toEqual(['limit', 'air-path'])
    expect(familiesOf(...twice, ['light', 300], ['silence', 305])).toEqual(['limit', 'flame-proving', 'venting'])
    // A second flame that dies is no warm spell, and is not counted from the first light.
    expect(
      familiesOf(['calls', 0], ['light', 50], ['warm-air', 60], ['silence', 120], ['light', 200], ['silence', 215]),
    ).toEqual(['flame-proving', 'fuel'])
  })

  it('does not take a warm spell for done where a flame went out beside it, nor a pause before the light for one', () => {
    const light: [StartupEvent, number][] = [
      ['calls', 0],
      ['light', 50],
      ['warm-air', 60],
      ['silence', 120],
    ]
    expect(familiesOf(...light)).toEqual([])
    expect(familiesOf(...light, ['light', 200], ['silence', 230])).toEqual(['flame-proving', 'limit', 'venting'])
    expect(familiesOf(['calls', 0], ['silence', 10], ['light', 50], ['warm-air', 95])).toEqual([])
    // A hum, or a call, beside warm air ends nothing: the room is still warmed.
    for (const also of ['hum', 'calls'] as const)
      for (const at of [70, 100])
        expect(familiesOf(['calls', 0], ['light', 50], ['warm-air', 60], [also, at])).toEqual([])
  })

  it('leans to the blower where it is lit and only cool air comes', () => {
    expect(familiesOf(['calls', 0], ['light', 50], ['cool-air', 120])).toEqual(['blower', 'flame-proving'])
    expect(familiesOf(['calls', 0], ['light', 50])).toEqual([])
    // Cool air before it got warm ends nothing.
    expect(familiesOf(['calls', 0], ['light', 50], ['cool-air', 60], ['warm-air', 95])).toEqual([])
  })

  it('says of each row whether it came early, within its range or late, after the row before', () => {
    const fitsOf = (...pairs: [StartupEvent, number][]) => {
      const watched = watchStartup(times(...pairs), STARTUP)
      if (watched.kind !== 'watched') throw new Error(watched.kind)
      return watched.rows.map(({ after, fits }) => [after, fits])
    }
    // Of the light: 15 to 120 seconds after the hum; of warm air: 15 to 150 after the light.
    expect(fitsOf(['calls', 0], ['hum', 60], ['light', 75], ['warm-air', 90])).toEqual([
      [0, 'within'],
      [60, 'within'],
      [15, 'within'],
      [15, 'within'],
    ])
    expect(fitsOf(['calls', 0], ['hum', 61], ['light', 75], ['warm-air', 225])).toEqual([
      [0, 'within'],
      [61, 'late'],
      [14, 'early'],
      [150, 'within'],
    ])
    expect(fitsOf(['calls', 0], ['hum', 5], ['light', 126]).slice(2)).toEqual([
      [121, 'late'],
      [null, 'not-seen'],
    ])
    // A light seen before the hum is not the light after it.
    expect(fitsOf(['calls', 0], ['light', 2], ['hum', 5]).slice(1, 3)).toEqual([
      [5, 'within'],
      [null, 'not-seen'],
    ])
    expect(fitsOf(['calls', 0], ['hum', 0])[1]).toEqual([0, 'within'])
  })

  it('is normal only where every row was seen and nothing leans', () => {
    const normal = (...pairs: [StartupEvent, number][]) => {
      const watched = watchStartup(times(...pairs), STARTUP)
      return watched.kind === 'watched' && watched.normal
    }
    expect(normal(['calls', 0], ['hum', 5], ['light', 50], ['warm-air', 95])).toBe(true)
    expect(normal(['calls', 0], ['hum', 5], ['light', 50])).toBe(false)
    expect(normal(['calls', 0], ['hum', 5], ['light', 50], ['warm-air', 95], ['cool-air', 100])).toBe(false)
  })

  it('takes times from 0 to 7200 seconds, two at once, and 60 events', () => {
    const kind = (events: TimedEvent[]) => watchStartup(events, STARTUP).kind
    expect(kind(times(['calls', 0], ['hum', 7200]))).toBe('watched')
    expect(kind(times(['calls', 0], ['hum', 7201]))).toBe('broken')
    expect(kind(times(['calls', 5], ['hum', 5]))).toBe('watched')
    const many = (count: number) => times(...Array.from({ length: count }, (): [StartupEvent, number] => ['calls', 1]))
    expect(kind(many(60))).toBe('watched')
    expect(kind(many(61))).toBe('broken')
    expect(watchStartup(times(['calls', 0], ['bang', 9], ['bang', 12]), STARTUP)).toMatchObject({ kind: 'stop', at: 9 })
  })

  it('is broken without a family that it leans to', () => {
    expect(() => watchStartup(times(['silence', 300]), { ...STARTUP, families: [] })).toThrow(
      'no start-up family power',
    )
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
