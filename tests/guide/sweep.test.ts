import { describe, expect, it } from 'vitest'
import { FLOWS } from '@/content/guide/flows'
import { HAZARD_TEXTS } from '@/content/guide/hazards'
import { STARTUP } from '@/content/guide/startup'
import { sentences } from '@/lib/guide/words'

/**
 * The checker knows how a forbidden wish is worded. This sweep is coarser and knows no grammar: a sentence that merely
 * holds such words is found, whatever it says, and must stand in the list below, which a person has read.
 */
const FORBIDDEN: [wish: string, ...words: RegExp[]][] = [
  [
    'opens a cover',
    /\b(open|remove|undo|unscrew|lift|take|pull|pry|slide|swing|unlatch|off)\b/i,
    /\b(covers?|panels?|cabinets?|plates?|housings?|lids?|hatch(es)?|doors?)\b/i,
  ],
  [
    'touches gas or live parts',
    /\b(touch|turn|shut|close|open|tap|press|push|reset|clean|wipe|tighten|loosen|adjust|move|check|replace|swap|hold)\b/i,
    /\b(gas (line|pipe|valve|cock|main|meter)|gas|valves?|burners?|pilots?|wires?|wiring|fuses?|terminals?|electrodes?|igniters?|ignitors?|sensors?|thermocouples?|boards?|capacitors?|coils?|refrigerant|rollout|floats?|cords?|outlets?|plugs?)\b/i,
  ],
  ['relights', /\b(relight|re-light|light|lit|ignite|strike|match(es)?)\b/i],
  ['bypasses', /\b(bypass|jumper|jump|tape|wedge|defeat|override|hold|shorten|shorting)\b/i],
  ['measures', /\b(measure|meters?|multimeter|volts?|voltage|ohms?|amps?|pressure|gauge)\b/i],
]

const READ_AND_ALLOWED: Record<string, string[]> = {
  'They forbid it.': [
    'Touch no switch, no plug, no stove.',
    'Light nothing.',
    'They must touch no switch and light nothing.',
    'Do not touch gas, wires or the burner.',
    'Do not touch the boiler, a pipe or a valve.',
    'Do not touch the unit, a cord or the breaker box.',
    'Do not lift or press the float.',
    'If not: never press it twice: oil fills the burner and may flash.',
  ],
  'They say or ask what is seen from where one stands.': [
    'A cover is loose or off.',
    'Was there a bang or boom when the burner lit?',
    'It tries to light, and no flame comes.',
    'Is there a CO alarm near the bedrooms, with a light on and no chirp?',
    'From a step back: does the red button of the oil unit stand out, or is its red light on?',
    'Near the unit there may be a switch like one for a light.',
    'Is no timer or hold in the way?',
    'Light comes through',
  ],
  'They speak of a lamp, a hand, a home.': [
    'Hold it to a lamp, never to a flame.',
    'Warm drinks are fine if they can hold the cup.',
    'The unit should be clear, and the home should hold its heat.',
  ],
  'They say what to tell a professional, or what may lie behind it.': [
    'Say: a cover is off or loose.',
    'Say: there was a bang, or soot, when the burner lit.',
    'It may be the vent or its pressure: snow, ice, wind or a full drain.',
    'Weak fuel and unsteady pressure look the same.',
  ],
}

// What is no text for people: names, targets, conditions.
const NO_TEXT = ['id', 'to', 'sources', 'reviewed', 'mark', 'sets', 'when', 'kind', 'event', 'says', 'hazard', 'fact']

function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value]
  if (value === null || typeof value !== 'object') return []
  return Object.entries(value).flatMap(([key, part]) => (NO_TEXT.includes(key) ? [] : textsIn(part)))
}

function found(texts: readonly string[]): string[] {
  const all = new Set(texts.flatMap(sentences))
  return [...all].flatMap((sentence) => {
    const wish = FORBIDDEN.find(([, ...words]) => words.every((word) => word.test(sentence)))?.[0]
    return wish === undefined ? [] : [sentence]
  })
}

describe('no text of the guide asks to open, touch, relight, bypass or measure', () => {
  const texts = textsIn([FLOWS, HAZARD_TEXTS, STARTUP])
  const allowed = Object.values(READ_AND_ALLOWED).flat()

  it('whatever holds such words was read by a person, and the list holds nothing else', () => {
    const held = found(texts)
    expect(held.filter((sentence) => !allowed.includes(sentence))).toEqual([])
    const sentencesNow = new Set(texts.flatMap(sentences))
    expect(allowed.filter((sentence) => !sentencesNow.has(sentence))).toEqual([])
  })

  it('the allowed negations do forbid', () => {
    for (const sentence of READ_AND_ALLOWED['They forbid it.'] ?? [])
      expect(sentence).toMatch(/\b(do not|never|touch no|light nothing)\b/i)
  })

  it('reads every text: more than 700 sentences', () => {
    expect(new Set(texts.flatMap(sentences)).size).toBeGreaterThan(700)
  })

  it.each([
    'Open the lower panel.',
    'Slide the front cover to the left.',
    'Close the gas valve by the wall.',
    'Clean the sensor with a cloth.',
    'Light the pilot with a long match.',
    'Hold the door switch in.',
    'Measure between the two screws.',
    'Read the pressure at the gauge.',
  ])('finds “%s” wherever it is planted', (planted) => {
    expect(found([...texts, `Look first. ${planted}`])).toContain(planted)
  })
})
