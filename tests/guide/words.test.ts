import { describe, expect, it } from 'vitest'
import { FLOWS } from '@/content/guide/flows'
import { FIRST_SCREEN, HAZARD_TEXTS } from '@/content/guide/hazards'
import { GUIDE_SOURCES } from '@/content/guide/sources'
import { readingGrade } from '@/lib/cli/reading-grade'
import { exportFlows, fillEmergency, fillFlow } from '@/lib/guide/export'
import type { Flow, GuideNode } from '@/lib/guide/types'
import { askFaults, forbids, type Readability, readingFaults, sentences, wordFaults } from '@/lib/guide/words'

const NEVER = [
  'Open the front panel.',
  'Remove the lower door and set it aside.',
  'Take off the burner cover.',
  'Lift off the access panel with both hands.',
  'Turn the gas valve to OFF.',
  'Close the gas valve.',
  'Clean the flame sensor with fine steel wool.',
  'Tap the igniter.',
  'Press the rollout reset.',
  'Lift the float switch.',
  'Relight the pilot.',
  'Light the burner with a long match.',
  'Tape the door switch.',
  'Jump the two wires.',
  'Bypass the limit.',
  'Measure the voltage at the board.',
  'Check the gas pressure.',
  'Use a meter.',
  'Replace the fuse.',
  'Look into the burner window.',
  'Reach into the unit.',
  'Chip the ice off.',
  'Pour hot water on the coil.',
  'Get a ladder.',
  'Heat the room with the oven.',
  'Could you open the cabinet?',
  'First, then unscrew the panel.',
]

describe('the sweep over what a text asks', () => {
  it.each(NEVER)('refuses “%s”', (text) => {
    expect([...askFaults(text, [])].map(([invariant]) => invariant)).toContain(2)
  })

  it.each([
    'Do not open the front panel.',
    'Never relight the pilot.',
    'Don’t touch the gas valve.',
    'Is a cover open or off?',
    'The burner stops, and the fan runs on.',
  ])('lets “%s” stand', (text) => {
    expect([...askFaults(text, [])]).toEqual([])
  })

  it('is not fooled by a "do not" in the sentence before', () => {
    expect([...askFaults('Do not wait. Open the front panel.', [])]).toHaveLength(1)
  })

  it('finds an instruction that is not named', () => {
    expect([...askFaults('Open the windows.', [])]).toMatchObject([[9, expect.stringContaining('windows')]])
    expect([...askFaults('Open the windows.', ['windows'])]).toEqual([])
    expect([...askFaults('Call your technician now.', [])]).toHaveLength(1)
    expect([...askFaults('Once you are outside, call the gas company.', [])]).toEqual([])
  })

  it('knows sentences, and which of them forbid', () => {
    expect(sentences('Stop. Do not go: it is hot!\nWhy?')).toEqual(['Stop.', 'Do not go: it is hot!', 'Why?'])
    expect(sentences(' One.   Two.\n\nThree:  Four. \n')).toEqual(['One.', 'Two.', 'Three', 'Four.'])
    expect(forbids('Do not go.')).toBe(true)
    expect(forbids('Go, and do not stop.')).toBe(false)
  })
})

describe('the sweep over what a text says', () => {
  const NODE: GuideNode = {
    id: 'one',
    kind: 'outcome',
    severity: 1,
    text: 'It is cold.',
    sources: [],
    reviewed: '2026-11-01',
  }
  const CHECK = 'Only if: you can.\nDo: look.\nTime: 1 minute.\nStop if: it is hot.\nIf not: call.'
  const found = (change: Partial<GuideNode>) => [...wordFaults({ ...NODE, ...change })].map(([invariant]) => invariant)

  it('finds prices, fixes, parts and single causes, in the sections too', () => {
    expect(found({})).toEqual([])
    for (const text of [
      'It costs $90.',
      'The fan is broken.',
      'A gas valve, or a fan, may be at work.',
      'It may be the fan.',
    ]) {
      expect([text, found({ text })]).toEqual([text, [16]])
      expect([text, found({ kind: 'question', text })]).toEqual([text, []])
    }
    const sections = [{ slot: 'say', text: 'Needs a new fan.' }] as GuideNode['sections']
    expect(found({ sections })).toEqual([16])
    expect(found({ text: 'It may be a fan or a wire.' })).toEqual([])
    expect(found({ text: 'It may be fire.', severity: 3 })).toEqual([])
  })

  it('lets no emergency sell or send elsewhere, and asks a check for each of its lines', () => {
    expect(found({ text: 'Sign in first.', severity: 3 })).toEqual([12])
    expect(found({ text: 'Sign in first.', severity: 2 })).toEqual([])
    expect(found({ kind: 'check', text: CHECK })).toEqual([])
    expect(found({ kind: 'check', text: CHECK.replace('Time: 1 minute.', 'Time: ') })).toEqual([17])
    expect(found({ kind: 'check', text: CHECK.split('\n').slice(1).join('\n') })).toEqual([17, 17, 17, 17, 17])
    expect([...wordFaults({ ...NODE, kind: 'check', text: CHECK.replace('If not: call.', 'Else.') })]).toEqual([
      [17, 'no line “If not:”'],
    ])
  })

  it('finds a text that is too hard, by itself and with its sections, and a sentence that is too long', () => {
    const hard: Readability = { grade: (text) => (text.includes('arduous') ? 5.5 : 5) }
    const read = (change: Partial<GuideNode>, grade = hard) => [...readingFaults({ ...NODE, ...change }, grade)]
    expect(read({ severity: 3 })).toEqual([])
    expect(read({ text: 'An arduous walk.', severity: 2 })).toEqual([])
    expect(read({ text: 'An arduous walk.', severity: 3 })).toEqual([[19, 'reading grade 5.5, at most 5']])
    const sections = [{ slot: 'say', text: 'An arduous walk.' }] as GuideNode['sections']
    expect(read({ severity: 3, sections })).toHaveLength(1)
    expect(read({}, { grade: () => Number.NaN })).toHaveLength(1)
    const [twenty, more] = [`${'go '.repeat(19)}on.`, `${'go '.repeat(20)}on.`]
    expect(read({ text: twenty })).toEqual([])
    for (const change of [
      { text: more },
      { sections: [{ slot: 'say', text: more }] as GuideNode['sections'] },
      { answers: [{ text: more }] as GuideNode['answers'] },
    ])
      expect(read(change)).toEqual([[19, `21 words in one sentence: “${more}”`]])
    expect(read({ text: `${twenty} `.replaceAll(' ', '  ') })).toEqual([])
  })

  it('knows a plain question from a request in its clothes', () => {
    for (const text of ['Is the front panel open?', 'Can it be open?', 'Does it say that you can open the panel?'])
      expect([text, [...askFaults(text, [])]]).toEqual([text, []])
    for (const text of [
      'Can you open the panel?',
      'Would it help if you open the panel?',
      'Please, will you open the lid?',
    ])
      expect([text, [...askFaults(text, [])]]).toEqual([text, [[2, expect.stringContaining('cover')]]])
  })
})

it('a flow is exported with everything that its nodes have, and nothing that they have not', () => {
  const node = {
    id: 'a',
    kind: 'question',
    text: 'Call {emergency}.',
    sources: [],
    reviewed: '2026-11-01',
  } as GuideNode
  const flow = { id: 'x', nodes: [node] } as unknown as Flow
  expect(exportFlows([flow]).flows).toEqual([{ ...flow, nodes: [{ ...node, text: 'Call 911.' }] }])
  const answers = [{ id: 'yes', text: 'I called {emergency}', to: 'b' }] as unknown as GuideNode['answers']
  const sections = [{ slot: 'call', text: '{emergency}' }] as GuideNode['sections']
  const full = { ...flow, nodes: [{ ...node, answers, sections }] }
  expect(fillFlow(full, '112').nodes[0]).toEqual({
    ...node,
    text: 'Call 112.',
    answers: [{ id: 'yes', text: 'I called 112', to: 'b' }],
    sections: [{ slot: 'call', text: '112' }],
  })
})

describe('the words of the guide', () => {
  const flows = exportFlows(FLOWS).flows
  const nodes = flows.flatMap((flow) => flow.nodes)

  it('leave no placeholder in what is exported, and take the household’s own number', () => {
    expect(JSON.stringify(flows)).not.toContain('{emergency}')
    expect(fillEmergency(HAZARD_TEXTS.fire.text, '112')).toContain('Call 112 from outside')
  })

  it('read at grade 6 or lower, emergencies at 5', () => {
    for (const node of nodes) {
      const all = [node.text, ...(node.sections ?? []).map((section) => section.text)].join('\n')
      expect(readingGrade(all), node.id).toBeLessThanOrEqual(node.severity === 3 ? 5 : 6)
    }
  })

  it('have sentences of 20 words at most, answers too', () => {
    for (const node of nodes)
      for (const part of [node, ...(node.sections ?? []), ...(node.answers ?? [])])
        for (const sentence of sentences(part.text))
          expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(20)
  })

  it('of gas, CO and fire stand ready for the first screen, with a source each', () => {
    expect(FIRST_SCREEN).toEqual(['gas', 'co', 'fire'])
    for (const hazard of FIRST_SCREEN) {
      const text = HAZARD_TEXTS[hazard]
      expect(text.text).toMatch(/^DANGER\. .*[Gg]et everyone out/)
      expect(text.sources.every((id) => GUIDE_SOURCES.some((source) => source.id === id))).toBe(true)
    }
    expect(HAZARD_TEXTS.gas.sections.find((section) => section.slot === 'call')?.text).toMatch(
      /^Only once you are outside and far from the house/,
    )
  })

  it('never tell anyone to call from inside where there is gas', () => {
    const { text, sections } = HAZARD_TEXTS.gas
    for (const sentence of [text, ...sections.map((section) => section.text)].flatMap(sentences))
      if (/\bcall\b/i.test(sentence)) expect(sentence).toMatch(/outside|far/)
  })
})

// Flesch-Kincaid 1975: 0.39 × words per sentence + 11.8 × syllables per word − 15.59, reckoned by hand.
describe('the reading grade', () => {
  it('is the published formula', () => {
    expect(readingGrade('The cat sat. The dog ran.')).toBeCloseTo(0.39 * 3 + 11.8 * 1 - 15.59, 6)
    expect(readingGrade('Call 911 now.')).toBeCloseTo(0.39 * 3 + 11.8 * (5 / 3) - 15.59, 6)
  })
})
