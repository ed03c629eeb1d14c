import type { Hazard, Section, Severity, Slot } from '@/lib/guide/types'
import type { OutcomeParts } from './build'

export function section(slot: Slot, text: string, says?: Section['says']): Section {
  return { slot, text, ...(says && { says }) }
}

/** The tenant's version; a home whose tenure is unknown counts as rented. */
export function renting(text: string): Section {
  return { slot: 'tenant', text, when: { tenure: ['rent'] } }
}

export function letting(text: string): Section {
  return { slot: 'tenant', text, when: { tenure: ['let'] } }
}

export const TELL_LATER = [
  renting('Do not wait for your landlord. Once you are safe, tell them in writing.'),
  letting('Make sure that each person in the building is told. Let no one back in.'),
]

export const TELL_NOW = [
  renting('Tell your landlord now, in writing, with the time. Ask who is coming and when.'),
  letting('Tell the people in the home what to leave alone. Send a licensed technician today.'),
]

export interface HazardText extends OutcomeParts {
  hazard: Hazard
  title: string
  /** DANGER and WARNING as the sign standard uses them; print the word, never colour alone. */
  signal: 'DANGER' | 'WARNING'
  severity: Severity
}

/**
 * Each hazard's words, written once: the first screen and the emergency page print gas, co and fire from here,
 * static, and the flows end in the same texts. `{emergency}` is the household's number, 911 unless set.
 */
export const HAZARD_TEXTS: Record<Hazard, HazardText> = {
  gas: {
    id: 'emergency-gas',
    hazard: 'gas',
    title: 'Gas smell',
    signal: 'DANGER',
    severity: 3,
    text: 'DANGER. Gas smell. Stop. Do not tap the screen again. Get everyone out now, on foot. Touch no switch, no plug, no stove. Light nothing. Do not look for the leak. Do not open windows. Stay out until the crew says that it is safe.',
    says: ['leave'],
    sections: [
      section(
        'call',
        'Only once you are outside and far from the house: call {emergency}. Then, still outside, call the gas company.',
        ['phone-away'],
      ),
      section('say', 'Say: I smell gas. Give the address. Say who may still be inside.'),
      section('dont', 'Do not use a phone inside. Do not start a car. Do not go back for coats or pets.'),
      section('watch', 'The nose gets used to gas. If the smell fades, stay out all the same.'),
      section('meanwhile', 'Stay together, far from the house. Warn others from outside. Wait at a neighbor’s home.'),
      ...TELL_LATER,
    ],
    sources: ['state-utility', 'phmsa', 'cpsc-gas', 'propane-council', 'policy'],
  },
  co: {
    id: 'emergency-co',
    hazard: 'co',
    title: 'Carbon monoxide alarm, or people feel ill',
    signal: 'DANGER',
    severity: 3,
    text: 'DANGER. You can not see or smell this gas. Get everyone out to fresh air now, pets too. Call {emergency} from outside. Do not go back in to stop the alarm or to open windows. Stay out until the fire crew says that it is safe.',
    says: ['leave', 'phone-away'],
    sections: [
      section('call', 'Call {emergency} once you are outside.', ['phone-away']),
      section('say', 'Say: it may be carbon monoxide. Say if an alarm went off, and who feels sick.'),
      section('dont', 'Do not press the alarm’s button. Do not go back in, even if the beeps stop.'),
      section('watch', 'A bad head, a sick feeling or weak legs can get worse. Tell the crew at once.'),
      section('meanwhile', 'Count heads. Stay together in fresh air, away from cars that run.'),
      ...TELL_LATER,
    ],
    sources: ['nfpa-co', 'nfpa-alarms', 'epa-co', 'hrsa-co', 'policy'],
  },
  fire: {
    id: 'emergency-fire',
    hazard: 'fire',
    title: 'Smoke, sparks or a burning smell',
    signal: 'DANGER',
    severity: 3,
    text: 'DANGER. It may be a fire. Get everyone out now. Shut doors behind you on the way. Call {emergency} from outside. Do not go to the breaker box. Do not go back in.',
    says: ['leave', 'phone-away'],
    sections: [
      section('call', 'Call {emergency} once you are outside.', ['phone-away']),
      section('say', 'Say what you saw, heard or smelled, and where. Say who may still be inside.'),
      section('dont', 'Do not look for the source. Do not throw water. Touch no switch.'),
      section('watch', 'If the smell goes away, stay out all the same. A wall can hide a fire.'),
      section('meanwhile', 'Meet at one spot, away from the house. Count heads.'),
      ...TELL_LATER,
    ],
    sources: ['usfa-electric', 'utility-electric', 'policy'],
  },
  flood: {
    id: 'emergency-flood',
    hazard: 'flood',
    title: 'Flood water in the home',
    signal: 'DANGER',
    severity: 3,
    text: 'DANGER. Flood water can carry power, and gas can build up. Stay out of the water. Leave by a dry way. Do not go to the breaker box. Call {emergency} from a dry place outside.',
    says: ['leave', 'phone-away'],
    sections: [
      section(
        'call',
        'Call {emergency} from outside. Then, from there, call the power company. They can cut the power from outside.',
        ['phone-away'],
      ),
      section('say', 'Say: there is flood water by our heating. Say if you smelled gas.'),
      section('dont', 'Do not turn anything on or off. Do not use wet equipment again, even once it is dry.'),
      section('watch', 'If there is no dry way out, go up. Tell {emergency} where you are.'),
      section('meanwhile', 'Go to a dry, warm place away from the water.', ['warm-place']),
      ...TELL_LATER,
    ],
    sources: ['fema-flood', 'gama-flood', 'nema-flood', 'policy'],
  },
  steam: {
    id: 'emergency-steam',
    hazard: 'steam',
    title: 'Steam or hot water from a boiler',
    signal: 'DANGER',
    severity: 3,
    text: 'DANGER. Steam or hot water from a boiler can burn you, and the boiler may be too hot. Get everyone out of the home. Call {emergency} from outside. Do not go near it to turn it off.',
    says: ['leave', 'phone-away'],
    sections: [
      section('call', 'Call {emergency} from outside. Then, from there, call a licensed technician.', ['phone-away']),
      section('say', 'Say: steam or hot water comes from our boiler. Say where it stands.'),
      section('dont', 'Do not touch the boiler, a pipe or a valve. Do not add cold water.'),
      section('watch', 'If the hiss stops, stay out. It may start again.'),
      section('meanwhile', 'Keep children and pets with you, outside. Cool a burn with cool water.'),
      ...TELL_LATER,
    ],
    sources: ['boiler-label', 'practice', 'policy'],
  },
  people: {
    id: 'emergency-cold',
    hazard: 'people',
    title: 'Someone is too cold',
    signal: 'WARNING',
    severity: 3,
    text: 'WARNING. This may be a body that is too cold. Call {emergency} now. Keep the person warm and dry, and lay them down. Put blankets over them, and warm the chest first. If a CO alarm beeps or you feel ill too, all go out at once.',
    says: ['phone-here', 'keep-warm', 'leave'],
    sections: [
      section('call', 'Call {emergency} now. Stay on the line.', ['phone-here']),
      section('say', 'Say: a person is cold and confused, or hard to wake. Give the age and the room temperature.'),
      section('dont', 'Do not rub arms or legs. Do not give alcohol. Do not heat with an oven, a grill or a car.'),
      section('watch', 'If the person will not wake, tell {emergency} at once.'),
      section('meanwhile', 'Stay with them. Take off wet clothes. Warm drinks are fine if they can hold the cup.', [
        'keep-warm',
      ]),
      ...TELL_LATER,
    ],
    sources: ['nia-cold', 'cdc-cold', 'nfpa-oven', 'policy'],
  },
  shock: {
    id: 'stop-shock',
    hazard: 'shock',
    title: 'A tingle or shock',
    signal: 'DANGER',
    severity: 2,
    text: 'DANGER. A tingle means that power has got where it should not be. Keep away from the equipment and its pipes. Touch no metal near it, and no breaker. Call a licensed technician now.',
    says: ['phone-here'],
    sections: [
      section('call', 'Was someone hurt? Call {emergency}. If not, call a licensed technician now.', ['phone-here']),
      section('say', 'Say: we felt a shock from our heating or cooling. Say which part.'),
      section('dont', 'Do not touch it again to be sure. Do not turn anything on or off.'),
      section('watch', 'Sparks, a buzz, smoke or a burnt smell: leave, and call {emergency} from outside.', [
        'leave',
        'phone-away',
      ]),
      section('meanwhile', 'Keep children and pets out of that room. Warn everyone at home.'),
      ...TELL_NOW,
    ],
    sources: ['usfa-electric', 'utility-electric', 'policy'],
  },
  water: {
    id: 'stop-water',
    hazard: 'water',
    title: 'Water at electric parts',
    signal: 'DANGER',
    severity: 2,
    text: 'DANGER. Water and power can kill. Stay out of the wet spot. Do not touch the unit, a cord or the breaker box. Call a licensed technician now.',
    says: ['phone-here'],
    sections: [
      section('call', 'Call a licensed technician now. Sparks or a buzz? Leave, and call {emergency} from outside.', [
        'phone-here',
        'leave',
        'phone-away',
      ]),
      section('say', 'Say: there is water at the electric parts of our heating or cooling unit.'),
      section('dont', 'Do not mop there. Do not turn anything on or off. Do not dry the unit to use it.'),
      section('watch', 'The water rises, or you hear a buzz: leave, and call {emergency} from outside.', [
        'leave',
        'phone-away',
      ]),
      section('meanwhile', 'Keep children and pets away from the wet floor. Use another floor of the home.'),
      ...TELL_NOW,
    ],
    sources: ['fema-flood', 'nema-flood', 'policy'],
  },
  boom: {
    id: 'stop-boom',
    hazard: 'boom',
    title: 'A bang, or soot',
    signal: 'WARNING',
    severity: 2,
    text: 'WARNING. A bang at the start, soot or flame in the wrong place is not normal. Set the thermostat to OFF and leave it off. Do not look into the unit. Call a licensed technician today.',
    says: ['thermostat-off', 'phone-here'],
    sections: [
      section('call', 'Call a licensed technician today. At night, use the after-hours line.', ['phone-here']),
      section('say', 'Say: there was a bang, or soot, when the burner lit. Say how often.'),
      section('dont', 'Do not start it again, not even to show someone.'),
      section(
        'watch',
        'Gas smell, smoke, a CO alarm or people who feel ill: get out. Call {emergency} from far outside.',
        ['leave', 'phone-away'],
      ),
      section(
        'meanwhile',
        'Dress warm, and move to one warm room. Is it below 60 °F (16 °C) inside? Go to a warm place.',
        ['warm-room', 'warm-place'],
      ),
      ...TELL_NOW,
    ],
    sources: ['practice', 'ahri-panels', 'policy'],
  },
  oil: {
    id: 'stop-oil',
    hazard: 'oil',
    title: 'Heating oil spilled, or an oil smell',
    signal: 'WARNING',
    severity: 2,
    text: 'WARNING. Spilled oil or a strong oil smell is not safe to run. Set the thermostat to OFF. Keep flames and sparks away. Call a licensed oil technician today.',
    says: ['thermostat-off', 'phone-here'],
    sections: [
      section(
        'call',
        'Call a licensed oil technician today. A big spill or smoke? Leave, and call {emergency} from outside.',
        ['phone-here', 'leave', 'phone-away'],
      ),
      section('say', 'Say: there is oil, or an oil smell, at our heater. Say how much and where.'),
      section('dont', 'Do not press the red button. Do not wash the oil down a drain.'),
      section('watch', 'Smoke, soot in the air or people who feel ill: get out. Call {emergency} from outside.', [
        'leave',
        'phone-away',
      ]),
      section('meanwhile', 'Keep people and pets out of that room. Dress warm, or go to a warm place.', ['warm-place']),
      ...TELL_NOW,
    ],
    sources: ['nora-oil', 'practice', 'policy'],
  },
}

/** What the first screen of the guide and the emergency page print before any tap, in this order. */
export const FIRST_SCREEN: Hazard[] = ['gas', 'co', 'fire']
