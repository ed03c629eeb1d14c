import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { briefOfAddress } from '@/app/check/brief/brief-of-address'
import { BriefView } from '@/app/check/brief/brief-view'
import { OutcomeScreen } from '@/app/parts/guide/outcome-screen'
import { getFlow } from '@/content/guide/flows'
import { encodeWalk } from '@/lib/guide/address'
import { type GuidePlace, unknownHome } from '@/lib/guide/place'

const FLOW = getFlow('no-heat')
const WALK = { flow: FLOW.id, startedAt: 29_000_000, steps: [] }
const NOBODY: GuidePlace = { home: null, systemId: null, events: [], today: '2026-11-25', now: 29_000_100 }
const US: GuidePlace = { ...NOBODY, home: unknownHome('h1', 'America/Chicago') }
const METRIC: GuidePlace = { ...NOBODY, home: { ...unknownHome('h1', 'America/Chicago'), units: 'metric' } }

function outcomeIn(place: GuidePlace): string {
  const node = FLOW.nodes.find(({ kind, severity }) => kind === 'outcome' && severity === 2)
  if (!node) throw new Error('no outcome')
  return renderToStaticMarkup(<OutcomeScreen place={place} walk={WALK} node={node} marks={{}} />)
}

function briefIn(place: GuidePlace, more: string) {
  const search = `${encodeWalk(WALK)}${more}`
  const made = briefOfAddress(place, search, { household: null, system: null, filters: [] }, () => 'then')
  const page = renderToStaticMarkup(<BriefView place={place} search={search} made={made} />)
  return { made, page, room: made?.brief.sections[0]?.lines[2] }
}

test('a metric home is asked for the room in °C, and its form says so in the address; anybody else in °F', () => {
  const metric = outcomeIn(METRIC)
  expect(metric).toContain('How warm is the room, in °C? ')
  expect(metric.match(/<form[^>]*>.*?<\/form>/s)?.[0]).toContain('<input type="hidden" name="in" value="c"/>')
  for (const place of [NOBODY, US]) {
    expect(outcomeIn(place)).toContain('How warm is the room, in °F? ')
    expect(outcomeIn(place)).not.toContain('name="in"')
  }
})

test('an address that was asked in °C is read so wherever it is opened, and kept in °F', () => {
  for (const place of [METRIC, US, NOBODY]) {
    const { made, room } = briefIn(place, '&in=c&room=16')
    expect(made?.roomF).toBe(60.8)
    expect(room).toBe('Room temperature: 16 °C (60.8 °F)')
  }
  expect(briefIn(US, '&room=61').room).toBe('Room temperature: 61 °F')
  // One from before its home was asked in °C.
  expect(briefIn(METRIC, '&room=60.8').room).toBe('Room temperature: 16 °C (60.8 °F)')
  expect(briefIn(METRIC, '&in=c&room=16').made?.key).toBe(briefIn(METRIC, '&room=60.8').made?.key)
})

test('what was no temperature is asked again in the same degrees', () => {
  const metric = briefIn(METRIC, '&in=c&room=61').page
  expect(metric).toContain('How warm is the room, in °C?')
  expect(metric).toContain('A room is between -40 and 54 °C.')
  expect(metric).toContain('<input type="hidden" name="in" value="c"/>')
  const us = briefIn(US, '&room=chilly').page
  expect(us).toContain('How warm is the room, in °F?')
  expect(us).not.toContain('name="in"')
})
