import { describe, expect, it } from 'vitest'
import { FLOWS } from '@/content/guide/flows'
import { FIRST_SCREEN, HAZARD_TEXTS } from '@/content/guide/hazards'
import { GUIDE_SOURCES } from '@/content/guide/sources'
import { readingGrade } from '@/lib/cli/reading-grade'
import { exportFlows, fillEmergency } from '@/lib/guide/export'
import { askFaults, forbids, sentences } from '@/lib/guide/words'

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
    expect(forbids('Do not go.')).toBe(true)
    expect(forbids('Go, and do not stop.')).toBe(false)
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
