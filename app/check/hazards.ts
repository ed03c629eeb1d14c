/**
 * What to do at once, whatever the equipment. Sources: a state utility commission and PHMSA on gas, NFPA and EPA on
 * carbon monoxide, USFA on fire, NIA on cold; where they differ the stricter stands.
 */
export const LEAVE = [
  'You smell gas, even a little. A carbon monoxide alarm sounds. People feel sick or dizzy. You see smoke or sparks, or smell burning.',
  'Stop tapping. Get everyone out now, on foot, pets too.',
  'Touch no switch, no plug, no stove, no breaker. Light nothing. Do not look for the cause. Do not open windows.',
  'Do not go back in. Stay out until the fire crew or the gas company says that it is safe, even if it fades.',
]

/** For outside only. */
export const AFTER =
  'Only once you are outside and far from the house: call 911. After that, still outside, call the gas company.'

export interface Stop {
  when: string
  say: string
}

/** Where nobody has to leave at once, and still nobody may try anything. */
export const STOPS: Stop[] = [
  {
    when: 'Water on or near the equipment, a cord or the breaker box',
    say: 'Stay out of the wet. Touch nothing there. If it sparks or buzzes, leave and call 911 from outside. If not, call a licensed technician now.',
  },
  {
    when: 'The equipment stood under water at some time',
    say: 'Do not turn it on, even if it seems to work. Touch nothing on it. Call a licensed technician.',
  },
  {
    when: 'You felt a tingle or a shock',
    say: 'Touch nothing of it again, and keep others away. Call a licensed technician now.',
  },
  {
    when: 'A bang when the heat starts, or soot',
    say: 'Turn the heat off at the thermostat. Do not look into the burner. Call a licensed technician today.',
  },
  {
    when: 'It was reset once, or its breaker was, and it stopped again',
    say: 'Leave it off. Do not reset it again. Call a licensed technician today.',
  },
]

export const UNWELL = [
  'Someone cold is very sleepy, confused or slow to talk. Did anything burn fuel in the home today, or are you not sure? Everyone out, then call 911. Did nothing burn fuel? Call 911 and keep them warm.',
  'Someone hot is confused, or has stopped sweating. Call 911, and bring them to a cool place.',
  'A baby, an old, pregnant or ill person lives there, or it is colder than 60 °F inside. Do not wait for morning. Call a technician’s after-hours line, and go where it is warm.',
  'Never heat with an oven, a grill, a camp stove or a car.',
]
