import type { Fault } from './check-states'
import type { GuideNode, InstructionClass } from './types'

/** Sentences of a text: by full stop, question mark, exclamation mark, colon before a capital, and line. */
export function sentences(text: string): string[] {
  return text
    .split(/(?<=[.!?])\s+|\n|:\s+(?=[A-Z])/)
    .map((part) => part.trim())
    .filter((part) => part !== '')
}

/** Whether a sentence forbids instead of asking. Of "Stop. Do not touch it." only the second does. */
export function forbids(sentence: string): boolean {
  return /^(then |and |please )?(do not|don’t|don't|never|no one|nobody|not\b|without)\b/i.test(sentence)
}

function isPlainQuestion(sentence: string): boolean {
  return sentence.endsWith('?') && !/^(can|could|would|will|why not|please)\b.*\byou\b/i.test(sentence)
}

const UNIT = '(cover|panel|door|cabinet|plate|front|housing|burner|grate|unit|furnace|boiler|box|lid|hatch|cap)s?'
const LIVE =
  '(wire|wiring|terminal|fuse|capacitor|contactor|control board|circuit board|electrode|igniter|ignitor|flame sensor|sensor|thermocouple|transformer|relay|coil|refrigerant|rollout|limit|pressure switch|float|gas line|gas pipe|gas valve|gas|valve|burner|pilot|heat exchanger|vent joint|drain tee|sight glass|sight window|burner window)s?'

/** What may never be asked of anyone, in whatever words: invariant 2, over every sentence that does not forbid. */
const NEVER: [RegExp, string][] = [
  [
    new RegExp(
      `\\b(open|remove|unscrew|undo|lift|pull|pry|take|slide|swing|unlatch)\\b (off |out |up |open )?(the |a |its |each |that |any |front |lower |upper |burner |furnace |boiler |access )*${UNIT}\\b`,
      'i',
    ),
    'opens or removes a cover',
  ],
  [/\b(take|pull|pry|screw)\b.*\b(cover|panel|door)s?\b.*\boff\b/i, 'opens or removes a cover'],
  [/\b(screws?|screwdriver|wrench|pliers|nut driver|ladder)\b/i, 'needs a tool or a ladder'],
  [
    new RegExp(
      `\\b(touch|lift|raise|pull|jump|hold|turn|twist|tighten|loosen|tap|hit|clean|wipe|scrape|replace|swap|reset|press|push|adjust|disconnect|connect|unplug|jiggle|blow|sand|brush off|shut|close|check)\\b (on |off |out |up )?(the |a |its |each |any |main |old |two |both |all )*${LIVE}\\b`,
      'i',
    ),
    'touches gas, burner, live or sealed parts',
  ],
  [
    /\b(relight|re-light|light|ignite)\b (the |a |its )*(pilot|burner|flame|gas|boiler|furnace|match)/i,
    'relights or makes a flame',
  ],
  [
    /\b(bypass|jump|jumper|short|tape|wedge|defeat|hold down|override)\b (out |the |a |down |over |across )*(switch|float|door|safety|limit|sensor|wires?)/i,
    'bypasses a safety',
  ],
  [
    /\b(measure|(use|read|with) (a|the) meter|multimeter|voltmeter|manometer|volts?|voltage|ohms?|amps?|gas pressure)\b/i,
    'measures electricity, gas or pressure',
  ],
  [
    /\b(look|peek|peer|reach|put your hand) (in|into|inside|through) (the |a )?(unit|burner|furnace|boiler|cabinet|window|flame)/i,
    'looks or reaches into the equipment',
  ],
  [/\b(chip|scrape|pour (hot |warm )?water|thaw .* with|torch|hair ?dryer)\b/i, 'chips, pours or thaws'],
  [
    /\b(heat|warm up) (the room |the home )?with (an? |the )?(oven|stove|grill|car)/i,
    'heats with an oven, a grill or a car',
  ],
]

const CLASS_WORDS: [InstructionClass, RegExp][] = [
  ['breaker', /\b(push|flip|reset|switch|turn|throw)\b.*\bbreaker\b/i],
  ['thermostat-off', /\b(set|turn|switch) (the thermostat|the heat|cooling|it|heat)\b.*\b(to )?OFF\b/i],
  ['thermostat-on', /\bset the thermostat (to (HEAT|COOL)|back)/i],
  ['switch-on', /\bswitch to ON\b/i],
  ['oil-button', /\bpress the red button/i],
  ['batteries', /\bput (in )?(new )?batteries/i],
  ['emergency-heat', /\bset (it|the thermostat) to EM(ERGENCY)? HEAT/i],
  ['fan-on', /\bset the fan to ON\b/i],
  ['windows', /\bopen (the |a |all |some )?windows?\b/i],
  ['find-leak', /\b(look|search|sniff) for (the|a) leak|\bfind the leak/i],
  ['main-valve', /\b(shut|turn|close)\b.*\b(gas main|main valve|gas off)\b/i],
  ['phone-here', /\b(call|phone|ring|text) (a\b|an\b|the\b|your\b|us\b|sooner|911|\{emergency\})/i],
  ['filter', /\b(slide|put|pull|change|swap|take)\b.*\bfilter\b/i],
  ['registers', /\bopen each grille|\bopen the (grilles|registers)/i],
  ['clear-space', /\bmove .*\baway\b/i],
  ['vent-clearing', /\b(brush|clear|sweep)\b.*\b(pipe|vent)\b/i],
  ['space-heater', /\b(plug-in|space) heater/i],
  ['warm-room', /\bone warm room/i],
  ['warm-place', /\b(go|move) (there|to a (warm|dry))/i],
  ['keep-warm', /\bkeep (the person|them|him|her)\b.*\b(warm|dry)|\bblankets over\b/i],
  ['cool-place', /\b(go|move .*) to (shade|a cool place)/i],
  ['car', /\b(sit|wait|warm up|stay) in (a|the|your) .*car\b/i],
  ['towel', /\bput a (towel|bucket)/i],
  ['leave', /\b(get (every ?one )?out|all go out)\b/i],
  ['co-alarm-unit', /\bput in a new battery/i],
]

const AWAY = /\b(outside|far|away|from where you are|from there|neighbor|they|them)\b/i

/** What a text asks: forbidden asks, and instruction classes that it says without naming them (invariants 2 and 9). */
export function* askFaults(text: string, says: readonly InstructionClass[]): Generator<Fault> {
  for (const sentence of sentences(text)) {
    if (forbids(sentence) || isPlainQuestion(sentence)) continue
    for (const [pattern, what] of NEVER) if (pattern.test(sentence)) yield [2, `${what}: “${sentence}”`]
    for (const [name, pattern] of CLASS_WORDS) {
      if (!pattern.test(sentence) || says.includes(name)) continue
      if (name === 'phone-here' && AWAY.test(sentence)) continue
      yield [9, `says ${name} without naming it: “${sentence}”`]
    }
  }
}

const SELLING =
  /\b(sign in|sign up|log in|log on|buy|order now|shop|chat|fill (in|out)|continue|subscribe|discount|offer)\b|https?:/i
const PART_AS_FIX = /\b(replace|needs? a new|install a new|is broken|has failed|is the cause|the cause is|is faulty)\b/i
const PRICE = /[$€£]\s?\d|\b(price|dollars?|costs?)\b/i
const PARTS =
  /\b(igniter|ignitor|flame sensor|capacitor|contactor|compressor|control board|gas valve|thermocouple|inducer|pressure switch|blower motor)\b/i

const LABELS = ['Only if: ', 'Do: ', 'Time: ', 'Stop if: ', 'If not: ']

/** What a node's words break beside what they ask: invariants 12, 16 and 17. */
export function* wordFaults(node: GuideNode): Generator<Fault> {
  const all = [node.text, ...(node.sections ?? []).map((section) => section.text)].join('\n')
  if (node.kind === 'check') {
    const lines = node.text.split('\n')
    for (const [i, label] of LABELS.entries())
      if (!lines[i]?.startsWith(label) || lines[i]?.length === label.length) yield [17, `no line “${label.trim()}”`]
  }
  if (node.kind !== 'outcome') return
  if (node.severity === 3 && SELLING.test(all)) yield [12, 'an emergency sells, asks or sends elsewhere']
  if (PRICE.test(all)) yield [16, 'names a price']
  if (PART_AS_FIX.test(all)) yield [16, 'names a fix or a cause as certain']
  if (PARTS.test(all)) yield [16, 'names a part']
  for (const sentence of sentences(node.text))
    if (/\b(it|this) may be\b/i.test(sentence) && node.severity !== 3 && !/,| or /.test(sentence))
      yield [16, `names a single family: “${sentence}”`]
}

export interface Readability {
  /** Reading grade of a text, Flesch-Kincaid. */
  grade(text: string): number
}

/** Invariant 19: grade 6, emergencies 5, and sentences of 20 words at most. */
export function* readingFaults(node: GuideNode, { grade }: Readability): Generator<Fault> {
  const texts = [node.text, ...(node.sections ?? []).map((section) => section.text)]
  const limit = node.severity === 3 ? 5 : 6
  // The main text by itself too: easy sections must not hide a hard one.
  const found = Math.max(grade(node.text), grade(texts.join('\n')))
  if (!(found <= limit)) yield [19, `reading grade ${found.toFixed(1)}, at most ${limit}`]
  for (const text of [...texts, ...(node.answers ?? []).map((answer) => answer.text)])
    for (const sentence of sentences(text)) {
      const words = sentence.split(/\s+/).length
      if (words > 20) yield [19, `${words} words in one sentence: “${sentence}”`]
    }
}
