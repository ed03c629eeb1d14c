import { describe, expect, it } from 'vitest'
import { encodeWalk, parseWalk, type Walk, withoutLast } from '@/lib/guide/address'

const WALK: Walk = {
  flow: 'no-heat',
  startedAt: 29_930_220,
  steps: [
    { node: 'gas', answer: 'no', minute: 0 },
    { node: 'presence', answer: 'yes', minute: 123_456 },
  ],
}

/** What the page says of a link that it can not read; null where it can. */
function because(search: string): string | null {
  const read = parseWalk(search)
  return read.kind === 'broken' ? read.because : null
}

function link(change: Partial<Record<'flow' | 'at' | 's' | 'n', string>> = {}): string {
  return `?${new URLSearchParams({ flow: 'no-heat', at: '29930220', s: 'gas.no.0', n: '1', ...change })}`
}

describe('the link of a walk', () => {
  it('reads as its writer says, and comes back as it was', () => {
    expect(encodeWalk(WALK)).toBe('?flow=no-heat&at=29930220&s=gas.no.0_presence.yes.123456&n=2')
    expect(parseWalk(encodeWalk(WALK))).toEqual({ kind: 'walk', walk: WALK })
    const begun = { ...WALK, steps: [] }
    expect(parseWalk(encodeWalk(begun))).toEqual({ kind: 'walk', walk: begun })
    const more = { ...WALK, steps: [...WALK.steps, { node: 'co', answer: 'no', minute: 123_457 }] }
    expect(withoutLast(more)).toEqual(WALK)
    expect(withoutLast(begun)).toEqual(begun)
  })

  it('names a trouble by small letters, figures and strokes, forty at most', () => {
    for (const flow of ['no-heat', '7', 'a'.repeat(40)]) expect([flow, because(link({ flow }))]).toEqual([flow, null])
    for (const flow of ['', '-heat', 'No-heat', 'no heat', 'no-heat/../x', 'a'.repeat(41)])
      expect(because(link({ flow }))).toBe('The link does not say what the trouble is.')
    expect(because('?at=29930220&s=&n=0')).toBe('The link does not say what the trouble is.')
  })

  it('says when the walk began, in whole minutes', () => {
    expect(because(link({ at: '0' }))).toBeNull()
    for (const at of ['', 'now', '-5', '1e7', ' 29930220', '2993022.5', '1234567890'])
      expect(because(link({ at }))).toBe('The link does not say when the walk began.')
    expect(because('?flow=no-heat&s=&n=0')).toBe('The link does not say when the walk began.')
  })

  it('says nothing twice: of two answers nobody could tell which is meant', () => {
    for (const more of ['flow=no-cool', 'at=29930221', 's=gas.yes.0', 'n=1'])
      expect(because(`${link()}&${more}`)).toBe('The link says the same thing twice.')
    expect(because(`${link()}&system=up&system=down`)).toBeNull()
  })

  it('that lost its end on the way is found out by the count of its answers', () => {
    for (const n of ['0', '2', '', '01', 'x']) expect(because(link({ n }))).toBe('The link was cut short.')
    expect(because('?flow=no-heat&at=29930220&s=gas.no.0')).toBe('The link was cut short.')
    // A walk without an answer has none to count.
    expect(because('?flow=no-heat&at=29930220&n=0')).toBeNull()
  })

  it('holds three hundred answers at most', () => {
    const many = (count: number) => link({ s: Array(count).fill('gas.no.0').join('_'), n: String(count) })
    expect(because(many(300))).toBeNull()
    expect(because(many(301))).toBe('The link is far too long.')
  })

  it('with an answer that is none is refused whole', () => {
    for (const s of ['gas', 'gas.no', 'gas.no.', 'gas.no.1.2', 'gas..0', '.no.0', 'gas.no.x', 'gas.no.-1', 'Gas.no.0'])
      expect([s, because(link({ s }))]).toEqual([s, 'The link holds an answer that can not be read.'])
    expect(because(link({ s: 'gas.no.1234567' }))).toBe('The link holds an answer that can not be read.')
    expect(because(link({ s: 'gas.no.0_', n: '2' }))).toBe('The link holds an answer that can not be read.')
  })
})
