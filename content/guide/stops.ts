import type { OutcomeParts } from './build'
import { letting, renting, section, TELL_LATER, TELL_NOW } from './hazards'

/** Outcomes that are no single hazard's, but as hard a stop. */
export const OTHER_STOPS: OutcomeParts[] = [
  {
    id: 'hazards-now',
    severity: 3,
    text: 'DANGER. Gas smell, a CO alarm, people who feel ill, smoke or sparks: get everyone out now. Touch no switch. Light nothing. Leave on foot. Use no phone until you are outside and far from the house. Stay out until the crew says that it is safe.',
    says: ['leave'],
    sections: [
      section('call', 'Only once you are outside and far from the house: call {emergency}.', ['phone-away']),
      section('say', 'Say what you smelled, heard or saw. Give the address. Say who may still be inside.'),
      section('dont', 'Do not open windows. Do not look for the cause. Do not go back in.'),
      section('watch', 'If a smell fades or the beeps stop, stay out all the same.'),
      section('meanwhile', 'Stay together, far from the house. Wait at a neighbor’s home.'),
      ...TELL_LATER,
    ],
    sources: ['state-utility', 'phmsa', 'nfpa-co', 'usfa-electric', 'policy'],
  },
  {
    id: 'not-cleared',
    severity: 3,
    text: 'DANGER. Someone here met a gas smell, a CO alarm, smoke, a flood or steam. No crew has said that the home is safe. If you are inside, get everyone out now. Touch no switch. Use no phone until you are far outside.',
    says: ['leave'],
    sections: [
      section('call', 'Only once you are outside and far from the house: call {emergency}.', ['phone-away']),
      section('say', 'Say what was met, and when. Say that no one has cleared the home.'),
      section('dont', 'Do not start the heat again. Do not trust your nose: smells fade.'),
      section('watch', 'Does anyone feel ill? Tell {emergency} at once.'),
      section('meanwhile', 'Stay out. Once a crew has cleared the home, write it in the log. Then start here again.'),
      ...TELL_LATER,
    ],
    sources: ['phmsa', 'nfpa-co', 'policy'],
  },
  {
    id: 'emergency-heat-ill',
    severity: 3,
    text: 'DANGER. This may be heat stroke. Call {emergency} now. Move the person to shade or a cool place. Cool the skin with wet cloths and a fan. If a CO alarm beeps or you feel ill too, all go out at once.',
    says: ['phone-here', 'cool-place', 'leave'],
    sections: [
      section('call', 'Call {emergency} now. Stay on the line.', ['phone-here']),
      section('say', 'Say: a person is very hot, and confused or faint. Give the age.'),
      section('dont', 'Do not leave them alone. Give no drink to a person who can not sit up.'),
      section('watch', 'If the person will not wake, tell {emergency} at once.'),
      section('meanwhile', 'Keep wetting the skin until help is there.'),
      ...TELL_LATER,
    ],
    sources: ['cdc-heat', 'policy'],
  },
  {
    id: 'emergency-ill',
    severity: 3,
    text: 'WARNING. Someone is ill, and it may be the home. Call {emergency} now. If a CO alarm beeps or more people feel ill, all go out at once. Stay with the person.',
    says: ['phone-here', 'leave'],
    sections: [
      section('call', 'Call {emergency} now. Stay on the line.', ['phone-here']),
      section('say', 'Say how the person acts, the age, and how warm or cold the room is.'),
      section('dont', 'Do not leave them alone. Do not give alcohol.'),
      section('watch', 'If the person will not wake, tell {emergency} at once.'),
      section('meanwhile', 'Too cold: keep them dry, with blankets. Too hot: move them to a cool place.', [
        'keep-warm',
        'cool-place',
      ]),
      ...TELL_LATER,
    ],
    sources: ['nia-cold', 'cdc-heat', 'epa-co', 'policy'],
  },
  {
    id: 'stop-wet-before',
    severity: 2,
    text: 'WARNING. Equipment that was under water is not safe, even once it is dry. It may run for weeks and then fail in a bad way. Leave it alone. Call a licensed technician today.',
    says: ['phone-here'],
    sections: [
      section(
        'call',
        'Call a licensed technician today. Flooded gas, oil and electric units all need a professional.',
        ['phone-here'],
      ),
      section('say', 'Say: the unit was wet or flooded. Say how high the water came.'),
      section('dont', 'Do not turn it on or off. Do not dry it to use it. Do not go near wet outlets.'),
      section('watch', 'Gas smell, sparks or a buzz: get out. Call {emergency} from far outside.', [
        'leave',
        'phone-away',
      ]),
      section('meanwhile', 'Go to a warm, dry place. Friends, or a public warm room, will do.', ['warm-place']),
      ...TELL_NOW,
    ],
    sources: ['gama-flood', 'nema-flood', 'boiler-label', 'policy'],
  },
  {
    id: 'stop-tag',
    severity: 2,
    text: 'WARNING. A professional or your landlord has shut it off, or a hazard was met. Leave it as it is. Only a licensed technician may say that it can run.',
    sections: [
      section('call', 'Call the name on the tag, or a licensed technician, today.', ['phone-here']),
      section('say', 'Say what the tag reads, or what was met and when.'),
      section('dont', 'Do not take off the tag. Do not turn the unit on.'),
      section('watch', 'Gas smell, smoke or a CO alarm: get out. Call {emergency} from far outside.', [
        'leave',
        'phone-away',
      ]),
      section('meanwhile', 'Go to a warm place if the home gets cold. Once a pro clears it, write it in the log.', [
        'warm-place',
      ]),
      ...TELL_NOW,
    ],
    sources: ['boiler-label', 'practice', 'policy'],
  },
  {
    id: 'far-emergency',
    severity: 3,
    text: 'DANGER. You can not tell from afar. Tell the people there to get out now, on foot. They must touch no switch and light nothing. Call {emergency} from where you are, for that address.',
    says: ['leave', 'phone-away'],
    sections: [
      section('call', 'From where you are, far away, call {emergency} for that address.', ['phone-away']),
      section('say', 'Say what you were told, who lives there, and that you are not there.'),
      section('dont', 'Do not send anyone in to look. Do not start or stop anything by phone.'),
      section('watch', 'You can not reach them? Tell {emergency} so.'),
      section('meanwhile', 'Once they are out, they wait far from the house until the crew says that it is safe.'),
      renting('Tell your landlord too. Do not wait for a reply.'),
      letting('From where you are, call the gas company too. Note each call and its time.'),
    ],
    sources: ['state-utility', 'nfpa-co', 'policy'],
  },
]
