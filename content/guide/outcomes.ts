import type { GuideNode, InstructionClass, Section, Severity } from '@/lib/guide/types'
import { outcome } from './build'
import { HAZARD_TEXTS, type HazardText, letting, renting, section } from './hazards'
import { OTHER_STOPS } from './stops'

const WATCH = section(
  'watch',
  'Gas smell, a CO alarm, smoke, a bang or people who feel ill: get out. Call {emergency} from far outside.',
  ['leave', 'phone-away'],
)

const DONT = section('dont', 'Do not start it again. Do not open the unit. Do not touch gas, wires or the burner.')

const WARM = section(
  'meanwhile',
  'Is the home cold? Move to one warm room and dress warm. Is it below 60 °F (16 °C), or is a baby or an older person there? Go to a warm place. Keep a plug-in heater 3 feet (1 metre) from all that burns. Plug it straight into the wall. Never sleep with it on. Never heat with an oven, a grill or a car. Is it below 55 °F (13 °C)? Let taps drip, and keep sink doors ajar.',
  ['warm-room', 'warm-place', 'space-heater'],
)

const COOL = section(
  'meanwhile',
  'Close the blinds. Drink water. Is someone old, very young or ill, or does the home get very hot? Go to a cool place.',
  ['cool-place'],
)

const PLAIN = section('meanwhile', 'Keep people and things away from the unit. Write down what you see, with the time.')

const BASE_SOURCES = [
  'practice',
  'policy',
  'cpsc-heaters',
  'nfpa-oven',
  'nia-cold',
  'ipmc-heat',
  'redcross-pipes',
  'landlord-code',
]

const TENANT: Section[] = [
  renting(
    'Tell your landlord now, in writing. Give the time and the room temperature. Local law decides what they must do.',
  ),
  letting('Send a licensed technician. Most places ask for a safe and warm home. Local law decides.'),
]

interface VisitParts {
  id: string
  severity: 1 | 2
  /** What it looks like, and the families it may be. */
  text: string
  say: string
  meanwhile?: Section
  says?: InstructionClass[]
  sources?: string[]
}

/** A technician is needed: the sections are the same everywhere, so each safety sentence stands once. */
function visit({ id, severity, text, say, meanwhile = WARM, says, sources = [] }: VisitParts): GuideNode {
  const call =
    severity === 2
      ? 'Call your own technician, or another licensed one, today. At night, use the after-hours line.'
      : 'Call your own technician, or another licensed one, for a visit in the next days.'
  return outcome({
    id,
    severity,
    text,
    ...(says && { says }),
    sections: [
      section('call', call, ['phone-here']),
      section('say', `${say} Read them the brief.`),
      DONT,
      WATCH,
      meanwhile,
      ...TENANT,
    ],
    sources: [...BASE_SOURCES, ...sources],
  })
}

interface FineParts {
  id: string
  severity: Severity
  text: string
  meanwhile: string
  says?: InstructionClass[]
  meanwhileSays?: InstructionClass[]
  sources?: string[]
}

/** It works, or it is normal. */
function fine({ id, severity, text, meanwhile, says, meanwhileSays, sources = [] }: FineParts): GuideNode {
  return outcome({
    id,
    severity,
    text,
    ...(says && { says }),
    sections: [
      section(
        'call',
        severity >= 2
          ? 'Call your own technician, or another licensed one, today.'
          : 'Tell your technician at the next service. Call sooner if the trouble comes back.',
        ['phone-here'],
      ),
      section('say', 'Say what you saw, what you did, and when. Read them the brief.'),
      section('dont', 'Do not start it again if it stops. The one start is used until a technician has been.'),
      WATCH,
      section('meanwhile', meanwhile, meanwhileSays),
      renting('Tell your landlord in writing what happened, even if it works now.'),
      letting('Ask the people in the home again tomorrow. Note it in the log.'),
    ],
    sources: [...BASE_SOURCES, ...sources],
  })
}

const HEAT_FAMILIES: VisitParts[] = [
  {
    id: 'no-power',
    severity: 2,
    text: 'It gets no power, or a safety stop holds it. It may be the power supply, a full drain or a cover that is not shut.',
    say: 'Say: nothing happens at all. Say if the thermostat is blank.',
  },
  {
    id: 'no-start',
    severity: 2,
    text: 'The thermostat asks, but the unit does not answer. It may be the control power, or a safety stop that waits.',
    say: 'Say: the thermostat asks for heat, and we hear no hum.',
    sources: ['control-manuals'],
  },
  {
    id: 'hum-only',
    severity: 2,
    text: 'The small fan hums, and no flame comes. It may be a blocked vent, or a drain that is full, or wind.',
    say: 'Say: we hear the hum for minutes, with no whoosh.',
    sources: ['control-manuals'],
  },
  {
    id: 'no-flame',
    severity: 2,
    text: 'It tries to light, and no flame comes. It may be the spark or glow part, or the fuel supply.',
    say: 'Say: it clicks or glows, with no whoosh. Say if other gas or oil units work.',
    sources: ['control-manuals'],
  },
  {
    id: 'flame-lost',
    severity: 2,
    text: 'It lights and goes out within seconds. It may be that the flame is not sensed, or that the fuel is weak.',
    say: 'Say: it lights, and is out in some seconds. Say how many times.',
    sources: ['control-manuals'],
  },
  {
    id: 'bursts',
    severity: 2,
    text: 'Warm air comes for minutes, then cool air. It may be the air path, such as a filter, or a limit that stops the burner.',
    say: 'Say how long the warm air lasts, and how long the pause is.',
    sources: ['control-manuals'],
  },
  {
    id: 'comes-and-goes',
    severity: 2,
    text: 'The heat comes and goes. It may be how the flame is sensed, the fuel, a limit or the air path.',
    say: 'Say how long it is warm, how long it is cool, and how often.',
    sources: ['control-manuals'],
  },
  {
    id: 'no-air',
    severity: 2,
    text: 'It seems to heat, but little air comes. It may be the fan, or ice or dirt in the air path.',
    say: 'Say: the unit runs, and the air is weak or none.',
  },
  {
    id: 'still-cold',
    severity: 2,
    text: 'It is still cold after the wait. It may be the pump, air in the pipes, the outdoor unit or the control.',
    say: 'Say: we waited 10 minutes, and no heat came.',
  },
]

const HEAT_STOPS: VisitParts[] = [
  {
    id: 'trip-again',
    severity: 2,
    text: 'WARNING. It tripped or stopped again after a start. Leave it off. A second trip may mean a short or a worn motor.',
    say: 'Say: it tripped again after one reset.',
    sources: ['utility-electric'],
  },
  {
    id: 'used-up',
    severity: 2,
    text: 'It was started once since the trouble began, or no one can be sure. One start is all that is safe. Leave it as it is.',
    say: 'Say when it was last reset or turned on, and by whom.',
    sources: ['control-manuals', 'nora-oil'],
  },
  {
    id: 'no-co-alarm',
    severity: 2,
    text: 'There is no CO alarm that works, so nothing that burns fuel should be tried. Leave it as it is.',
    say: 'Say what is wrong, and that we have no CO alarm that works.',
    sources: ['nfpa-co', 'epa-co'],
  },
  {
    id: 'cannot-check',
    severity: 2,
    text: 'You can not check this from where you are, and that is fine. It needs someone with a key or a license.',
    say: 'Say what is locked, too high, shared or out of reach.',
  },
  {
    id: 'cover-off',
    severity: 2,
    text: 'WARNING. A cover is loose or off. Air from the burner may get into the home. Keep away from it. Do not press it shut.',
    say: 'Say: a cover is off or loose. Say if the unit ran like that.',
    sources: ['ahri-panels'],
  },
  {
    id: 'vent-blocked',
    severity: 2,
    text: 'WARNING. A vent with ice in it, or one that is out of reach, is work for a professional. Do not run the heat.',
    say: 'Say: the vent pipe outside is blocked by ice or snow.',
    sources: ['nfpa-vents'],
  },
  {
    id: 'far-visit',
    severity: 2,
    text: 'You are not there, so you can not smell or hear it. Do not start anything from afar. Send a licensed technician today.',
    say: 'Say who can let them in. Say that nothing was tried.',
  },
]

const OTHER_VISITS: VisitParts[] = [
  {
    id: 'power-out',
    severity: 2,
    text: 'Wait for the power, and leave the heat as it is. Run a generator outdoors only, 20 feet (7 metres) away or more. Open windows do not make it safe.',
    say: 'Say: the power is out, and we have no heat.',
    sources: ['cpsc-generator'],
  },
  {
    id: 'leak-today',
    severity: 2,
    text: 'WARNING. Water from a boiler, a pipe or an unknown place should be seen today. It may be a leak, a valve or a drain. Stay away from hot water.',
    say: 'Say where the water is, and if it is hot.',
    sources: ['boiler-label'],
  },
  {
    id: 'drain-today',
    severity: 2,
    text: 'Water comes from the unit, and you need it to run. It may be a full drain, melting ice or a leak. Leave it off until it is seen, today.',
    say: 'Say where the water is, and that the home will get too cold or too hot.',
  },
  {
    id: 'air-spent',
    severity: 1,
    text: 'It was started once since the trouble began, or no one can be sure. One start is all that is safe. Leave it as it is.',
    say: 'Say which rooms, and when it was last turned off and on.',
    meanwhile: PLAIN,
  },
  {
    id: 'far-visit-soon',
    severity: 1,
    text: 'You are not there, so you can not smell or hear it. Do not start anything from afar. Send a licensed technician.',
    say: 'Say who can let them in. Say that nothing was tried.',
    meanwhile: PLAIN,
  },
  {
    id: 'no-cooling',
    severity: 1,
    text: 'It was started once, and it does not cool. It may be the outdoor unit, ice inside, or the control.',
    say: 'Say if the outdoor fan turns, and if the air is weak.',
    meanwhile: COOL,
    sources: ['cdc-heat'],
  },
  {
    id: 'no-cooling-today',
    severity: 2,
    text: 'WARNING. There is no cooling, and someone here can not stand heat. Leave the unit off. It may be the outdoor unit or the control.',
    say: 'Say: someone here is old, very young or ill, and it is hot.',
    meanwhile: COOL,
    sources: ['cdc-heat'],
  },
  {
    id: 'cooling-stop',
    severity: 1,
    text: 'There is no safe start left to try here. Leave the cooling off until a technician has been.',
    say: 'Say what happened, and what was tried or could not be checked.',
    meanwhile: COOL,
    sources: ['cdc-heat'],
  },
  {
    id: 'iced-coil',
    severity: 1,
    text: 'There may be ice on the indoor part or the pipe. It may be low air flow or the cooling circuit. Set cooling to OFF and leave it off while it thaws. Set the fan to ON.',
    says: ['thermostat-off', 'fan-on'],
    say: 'Say: it iced up. Say if it comes back after a day of thaw.',
    meanwhile: COOL,
    sources: ['doe-saver'],
  },
  {
    id: 'air-visit',
    severity: 1,
    text: 'The air is still weak or uneven. It may be the ducts, the fan, ice, or a second system that is off.',
    say: 'Say which rooms, and since when.',
    meanwhile: PLAIN,
    sources: ['doe-saver'],
  },
  {
    id: 'drain-visit',
    severity: 1,
    text: 'Water comes from the equipment, away from electric parts. It may be a full drain, melting ice or a leak. Leave the unit off.',
    say: 'Say where the water is, and if the unit ran.',
    meanwhile: section(
      'meanwhile',
      'Is the floor free of cords? Then put a towel or a bucket under the drip. Do not lift or press the float.',
      ['towel'],
    ),
  },
  {
    id: 'noise-visit',
    severity: 1,
    text: 'This noise should be looked at before it grows. It may be a loose part, a worn motor or the ducts.',
    say: 'Say what it sounds like, and when in the start it comes.',
    meanwhile: PLAIN,
  },
  {
    id: 'noise-today',
    severity: 2,
    text: 'WARNING. A loud or new metal noise can mean harm to the unit. Leave it off. It may be the fan, the motor or a loose part.',
    say: 'Say what it sounds like, and that you left it off.',
  },
  {
    id: 'ice-visit',
    severity: 2,
    text: 'Ice that stays is not normal. It may be the defrost control, the outdoor fan or the sealed circuit. Do not chip it, and use no water.',
    say: 'Say how thick the ice is, and how long it has been there.',
  },
]

const FINE: FineParts[] = [
  {
    id: 'heat-back',
    severity: 0,
    text: 'The heat is back. Let it run for an hour, and listen now and then.',
    meanwhile: 'If the filter was dark, note the new one in the log.',
  },
  {
    id: 'heat-back-watch',
    severity: 2,
    text: 'WARNING. The heat is back, but someone here can not stand cold, or the home is very cold. Have it seen today, so that it does not stop tonight.',
    meanwhile: 'Have a warm place ready. Is it below 60 °F (16 °C) now? Go there until the home is at 68 °F (20 °C).',
    meanwhileSays: ['warm-place'],
    sources: ['cdc-cold'],
  },
  {
    id: 'cooling-back',
    severity: 0,
    text: 'It cools again. Let it run, and look at the air and the drain in an hour.',
    meanwhile: 'If the filter was dark, note the new one in the log.',
  },
  {
    id: 'air-back',
    severity: 0,
    text: 'The air is better. Keep the grilles free, and look at the filter each month in season.',
    meanwhile: 'If the filter was dark, note the new one in the log.',
    sources: ['doe-saver'],
  },
  {
    id: 'defrost-normal',
    severity: 0,
    text: 'This is most likely defrost, and it is normal. White steam and a whoosh for some minutes clear the ice. Cool air inside for a short time is normal too.',
    meanwhile: 'Look again in half an hour. The unit should be clear, and the home should hold its heat.',
  },
  {
    id: 'defrost-watch',
    severity: 2,
    text: 'WARNING. It looks like defrost, but someone here can not stand cold, or the home is very cold. Have it seen today.',
    meanwhile: 'Is it below 60 °F (16 °C) now? Go to a warm place until the home is at 68 °F (20 °C).',
    meanwhileSays: ['warm-place'],
    sources: ['cdc-cold'],
  },
  {
    id: 'drip-normal',
    severity: 0,
    text: 'Some drips from the outdoor unit are normal, when it cools or clears its ice. Wet ground can be slick, so keep people off it.',
    meanwhile: 'Look again in an hour. Tell a technician if there is a lot of water.',
  },
  {
    id: 'noise-normal',
    severity: 0,
    text: 'Ticks and a soft pop from the ducts, when the fan starts, are most often metal that warms. That is normal.',
    meanwhile: 'Write down the noise and the time. Listen for a change.',
  },
  {
    id: 'alarm-chirp',
    severity: 1,
    text: 'One short chirp, again and again, most often means a weak battery or an old alarm. Put in a new battery, or a new alarm, today.',
    says: ['co-alarm-unit'],
    meanwhile: 'Try no check on anything that burns fuel until a CO alarm works again.',
    sources: ['nfpa-alarms'],
  },
]

function hazardOutcome({ hazard: _hazard, title: _title, signal: _signal, ...parts }: HazardText): GuideNode {
  return outcome(parts)
}

/** Every outcome, each once; a flow takes those that it can reach. */
export const OUTCOMES: GuideNode[] = [
  ...Object.values(HAZARD_TEXTS).map(hazardOutcome),
  ...OTHER_STOPS.map(outcome),
  ...[...HEAT_FAMILIES, ...HEAT_STOPS, ...OTHER_VISITS].map(visit),
  ...FINE.map(fine),
]
