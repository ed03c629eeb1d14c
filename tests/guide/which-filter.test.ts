import { describe, expect, it } from 'vitest'
import { lastMetOn } from '@/lib/guide/episode'
import { guideFacts } from '@/lib/guide/household-facts'
import { dayAt, dayOfMinute } from '@/lib/guide/phone-memory'
import { type GuideHome, unknownHome } from '@/lib/guide/place'
import { candidateFilters, meantFilters } from '@/lib/guide/which-filter'

const filter = (id: string, system: string) => ({ id, system, name: id })
const home: GuideHome = {
  ...unknownHome('h', 'America/Chicago'),
  filters: [filter('hall', 'down'), filter('stairs', 'down'), filter('attic', 'up')],
}
const meant = (systemId: string | null, named: string | null) =>
  meantFilters({ home, systemId }, named).map(({ id }) => id)

describe('a filter check in the guide', () => {
  it('is about the only filter of its system, without a question', () => {
    expect(meant('up', null)).toEqual(['attic'])
  })

  it('is about the filter that was named, or all of them, and about none where nobody can tell', () => {
    expect(meant('down', 'stairs')).toEqual(['stairs'])
    expect(meant('down', 'all')).toEqual(['hall', 'stairs'])
    expect(meant('down', null)).toEqual([])
    expect(meant('down', 'unknown')).toEqual([])
    expect(meant(null, null)).toEqual([])
  })

  it('is about the only filter of the home where no system was chosen, and about none without a home', () => {
    const small = { ...home, filters: home.filters.slice(2) }
    expect(meantFilters({ home: small, systemId: null }, null).map(({ id }) => id)).toEqual(['attic'])
    expect(candidateFilters({ home, systemId: null }).map(({ id }) => id)).toEqual(['hall', 'stairs', 'attic'])
    expect(candidateFilters({ home: null, systemId: null })).toEqual([])
    expect(meantFilters({ home: null, systemId: 'down' }, 'all')).toEqual([])
  })

  it('is never about the filter of another system', () => {
    expect(meant('down', 'attic')).toEqual([])
  })
})

describe('a home that a phone knows only by its address', () => {
  it('answers nothing for the person: every fact is the one of nobody known', () => {
    expect(guideFacts(unknownHome('h', 'UTC').profile, null, null)).toEqual({
      ...{ tenure: 'rent', vulnerable: 'no', systems: 'several', heatSource: 'unknown', delivery: 'unknown' },
    })
  })
})

describe('the day of an event', () => {
  it('is the home’s own: at nine in the evening in Chicago it is not tomorrow', () => {
    const minute = Date.parse('2026-11-26T03:00:00Z') / 60_000
    expect(dayAt(minute, 'America/Chicago')).toBe('2026-11-25')
    expect(dayOfMinute(minute)).toBe('2026-11-26')
  })

  it('of a check begun is none that a visit must come after', () => {
    expect(
      lastMetOn([
        { kind: 'trip', on: '2026-11-24', at: 1 },
        { kind: 'trouble-began', on: '2026-11-25', at: 2 },
      ]),
    ).toBe('2026-11-24')
  })
})
