import type { FinderCardTexts, PlaceText } from '@/lib/guide/finder-types'

const BEFORE = 'Turn heat, cooling and fan off first. Wait until no air moves.'

const PLACES: PlaceText[] = [
  {
    place: 'ceiling-grille',
    name: 'Behind the return grille in the ceiling',
    arrow: { say: 'The arrow points up, into the ceiling.', drawing: 'arrow-ceiling' },
    reach: [BEFORE, 'Hold the grille with one hand while you open it: it may swing down.'],
    drawing: 'arrow-ceiling',
    sources: ['E49', 'CP'],
  },
  {
    place: 'wall-grille',
    name: 'Behind the return grille in the wall',
    arrow: { say: 'The arrow points into the wall.', drawing: 'arrow-wall' },
    reach: [BEFORE, 'Open the two latches by hand.'],
    drawing: 'arrow-wall',
    sources: ['E49', 'CP'],
  },
  {
    place: 'floor-grille',
    name: 'Under the return grille in the floor',
    arrow: { say: 'The arrow points down, into the floor.', drawing: 'arrow-floor' },
    reach: [BEFORE, 'Keep children and pets away from the open hole. Close it before you step away.'],
    drawing: 'arrow-floor',
    sources: ['E49', 'CP'],
  },
  {
    place: 'furnace-slot',
    name: 'In the slot between the return duct and the furnace',
    arrow: { say: 'The arrow points to the furnace.', drawing: 'arrow-slot' },
    reach: [BEFORE, 'Slide the filter out by hand. Put the lid back on the slot.'],
    drawing: 'arrow-slot',
    sources: ['E49', 'CP'],
  },
  {
    place: 'in-cabinet',
    name: 'Inside the cabinet, behind the filter door',
    arrow: { say: 'The arrow points to the fan.', drawing: 'arrow-cabinet' },
    reach: [BEFORE],
    drawing: 'arrow-cabinet',
    sources: ['E46', 'E49', 'POL'],
  },
  {
    place: 'media-cabinet',
    name: 'In the wide box between the duct and the unit',
    arrow: { say: 'The arrow points to the unit.', drawing: 'arrow-media' },
    reach: [BEFORE, 'Open the small door by hand. Draw the thick filter straight out.'],
    drawing: 'arrow-media',
    sources: ['E49', 'CP'],
  },
  {
    place: 'ductless-head',
    name: 'Behind the front flap of the head on the wall',
    arrow: null,
    reach: ['Turn the head off with its remote. Lift the flap. Slide the screens out.', 'Do not touch the thin fins.'],
    drawing: 'ductless-head',
    sources: ['CP'],
  },
  {
    place: 'ventilator',
    name: 'Behind the door of the fresh-air box',
    arrow: null,
    reach: ['Turn it off and pull its plug. Open the hand latches. Slide the screens out.'],
    drawing: 'ventilator',
    sources: ['CP', 'POL'],
  },
]

/** The sentences of the filter card. The clogged-filter advice is common practice, and where sources differ the stricter. */
export const FINDER_CARD_TEXTS: FinderCardTexts = {
  places: PLACES,
  ask: [
    'This one is for the landlord or a licensed technician. Leave it shut.',
    'Write to them: where it is, when it was last changed, and that you would like a date.',
  ],
  stool: ['Use a low, wide stool, and have someone near. Never a ladder or a chair.'],
  cabinet: [
    'Turn off the power switch of the unit too. Open only the filter door, by hand.',
    'Burners, a flame or wires behind it? Close it and ask a technician.',
    'Shut the door fully before the power goes on. Never run the unit with a door open: CO may get into the rooms.',
  ],
  backOn: [
    'When all is shut, set it as it was. Turn it on once.',
    'Does it not start as always? Do not try again. Go to Check.',
    'If you smell gas or burning: get everyone out and call 911.',
  ],
  clogged: [
    'Never run heat, cooling or fan without a filter.',
    'Put the old one back, arrow the same way, until you have the new one. Get it today if you can.',
    'Use only the same size. A smaller one lets dust pass, and a larger one does not go in. Never cut or bend one.',
    'Until then run heat or cooling as little as people can bear. Cold is worse for people than a dirty filter is for the unit.',
    'Is the air weak, or does it start and stop? Turn it off and go to Check.',
  ],
  damaged: [
    'Do not put it back. A torn or wet filter can be drawn into the fan.',
    'Leave heat, cooling and fan off until a new one is in. Get it today.',
    'Was it wet? Tell the landlord or a technician: water should not be there.',
    'Is it too cold to wait? Call the landlord or a technician now, and stay where it is warm.',
  ],
  washable: [
    'Leave it all off while you wash. Never run without the filter.',
    'Rinse it with cool water until the water runs clear. Shake it. Let it dry fully in the air, often for a day.',
    'Never put it back wet. Use no heat to dry it.',
    'Wash it on a day when the home can do without heat or cooling.',
  ],
  unknownMedium: ['Do not wash a filter that does not say washable. Water ruins it.'],
  fresh: [
    'Put the new one in: same size, arrow the same way. Write the date on its frame.',
    'Put the old one in a bag before you carry it. Dust falls out.',
  ],
}
