import type { FinderScreen } from '@/lib/guide/finder-types'

/** Ductless heads, fresh-air boxes, and homes that may have no filter at all. */
export const OTHER_KINDS: FinderScreen[] = [
  {
    kind: 'question',
    id: 'head-off',
    title: 'Turn the head off',
    text: ['Turn it off with its remote or wall control. Wait five minutes, until its flap stands still.'],
    asks: ['head-off'],
    answers: [
      { id: 'done', say: 'It is off and still', next: 'open-flap', sets: { opener: 'you' } },
      { id: 'cannot', say: 'I cannot turn it off', next: 'card', sets: { opener: 'ask' } },
    ],
    sources: ['CP', 'POL'],
  },
  {
    kind: 'question',
    id: 'open-flap',
    title: 'Lift the front flap',
    text: ['Lift it with both hands until it stays up. Slide the thin mesh screens out. No tool is needed.'],
    drawings: ['ductless-head'],
    cautions: ['Thin metal fins sit behind the screens. They are sharp: do not touch them.'],
    asks: ['open-flap'],
    answers: [
      { id: 'screens', say: 'I have the screens', next: 'card', sets: { washable: 'yes' } },
      { id: 'stuck', say: 'It does not open by hand', next: 'card', sets: { opener: 'ask' } },
    ],
    sources: ['CP'],
  },
  {
    kind: 'question',
    id: 'ventilator-off',
    title: 'Turn the fresh-air box off',
    text: ['Turn it off at its own control. Does it have a plug that you can reach? With dry hands pull it out.'],
    asks: ['ventilator-off'],
    answers: [
      { id: 'done', say: 'It is off and unplugged', next: 'open-ventilator', sets: { opener: 'you' } },
      { id: 'cannot', say: 'There is no plug, or not sure', next: 'card', sets: { opener: 'ask' } },
    ],
    sources: ['CP', 'POL'],
  },
  {
    kind: 'question',
    id: 'open-ventilator',
    title: 'Open its door by hand',
    text: [
      'Open it only if its own booklet shows the screens behind a door with hand latches.',
      'Hold the door: it may be heavy. Slide out the screens and leave the rest.',
    ],
    drawings: ['ventilator'],
    cautions: ['A door with screws, or wires behind it, is for a technician.'],
    asks: ['open-ventilator'],
    answers: [
      { id: 'screens', say: 'I have the screens', next: 'card', sets: { washable: 'yes' } },
      { id: 'no', say: 'No booklet, a tool is needed, or I see wires', next: 'card', sets: { opener: 'ask' } },
    ],
    sources: ['CP', 'POL'],
  },
  {
    kind: 'question',
    id: 'none-here',
    title: 'Radiators and baseboards have no filter',
    text: ['No air is blown through them. Does the home have any of these as well?'],
    drawings: ['no-filter'],
    asks: ['look'],
    answers: [
      { id: 'no', say: 'No, nothing else', next: 'no-filter' },
      { id: 'ducts', say: 'Grilles that blow air', next: 'test' },
      { id: 'head', say: 'A long box high on a wall', next: 'reach', sets: { place: 'ductless-head' } },
      { id: 'fresh', say: 'A fresh-air box with round ducts', next: 'reach', sets: { place: 'ventilator' } },
    ],
    sources: ['E43', 'CP'],
  },
  {
    kind: 'question',
    id: 'building',
    title: 'Heat from the building',
    text: ['How does the heat come into your rooms?'],
    asks: ['look'],
    answers: [
      { id: 'radiator', say: 'By radiators or a warm floor', next: 'none-here' },
      { id: 'box', say: 'By a box with a fan in my rooms', next: 'building-box' },
      { id: 'ducts', say: 'By grilles that blow air', next: 'test' },
      { id: 'unsure', say: 'Not sure', next: 'building-box' },
    ],
    sources: ['CP'],
  },
]
