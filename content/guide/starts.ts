import type { Answer, GuideNode, When } from '@/lib/guide/types'
import { button, check, look, question, REVIEWED, skip } from './build'
import { byRisk, TRIPS } from './checks'
import { gatesAgain } from './gates'

const STALE = {
  resetUsed: 'yes',
  gasDenied: 'stale',
  coDenied: 'stale',
  fireDenied: 'stale',
  boomDenied: 'stale',
}

const READY = {
  resetUsed: ['no'],
  tripped: ['no'],
  gasDenied: ['yes'],
  coDenied: ['yes'],
  fireDenied: ['yes'],
  boomDenied: ['yes'],
}

/** Where each start leads when it is not allowed after all: to a person who may. */
const NOT_READY = skip('cannot-check', { least: '2' })

/** What a start may show at once. */
function startAnswers(): Answer[] {
  return [
    button('done', 'Done', 'wait', STALE),
    button('trips', 'It tripped, or went dead at once', 'trip-again', TRIPS),
    button('cannot', 'I can not do this', 'cannot-check', { least: '2' }),
    NOT_READY,
  ]
}

const MODE = {
  heat: 'set the thermostat to HEAT, 3 degrees above the room',
  cool: 'set the thermostat to COOL, 3 degrees below the room',
  back: 'set the thermostat back to how it was before',
}
export type Mode = keyof typeof MODE

const START_STOP = 'it trips, bangs, smokes or smells. Then leave it off.'
const START_NOT = 'do not try again. This was the one start.'

export function startThermostat(mode: Mode, when: When = {}): GuideNode {
  return check({
    id: 'start',
    action: 'thermostat',
    turnsOn: true,
    onlyIf: 'all checks are done, and the unit was off for 5 minutes or more.',
    does: `One time only, ${MODE[mode]}.`,
    time: 'about 10 minutes until you can tell.',
    stopIf: START_STOP,
    ifNot: START_NOT,
    says: ['thermostat-on'],
    when: { ...READY, ...when },
    answers: startAnswers(),
    sources: ['control-manuals', 'policy'],
  })
}

export function startBreaker(mode: Mode): GuideNode {
  return check({
    id: 'start-breaker',
    action: 'breaker',
    turnsOn: true,
    onlyIf: 'hands and floor are dry. The box is cool and quiet, with no smell. The thermostat is at OFF or blank.',
    does: `One time only, push the breaker all the way to OFF, then to ON. Then ${MODE[mode]}.`,
    time: 'about 10 minutes until you can tell.',
    stopIf: START_STOP,
    ifNot: START_NOT,
    says: ['breaker', 'thermostat-on'],
    when: { ...READY, breaker: ['tripped'], waterDenied: ['yes'] },
    answers: [
      ...startAnswers(),
      button('bad', 'It is hot, buzzes, or will not move', 'emergency-fire', {
        fireDenied: 'no',
        hazardSeen: 'leave',
        resetUsed: 'yes',
        least: '3',
      }),
    ],
    sources: ['utility-electric', 'practice', 'policy'],
  })
}

export function startSwitch(mode: Mode): GuideNode {
  return check({
    id: 'start-switch',
    action: 'reset',
    turnsOn: true,
    onlyIf: 'hands and floor are dry, there is no tag, and no one meant it to be off.',
    does: `One time only, set the wall switch to ON. Then ${MODE[mode]}.`,
    time: 'about 10 minutes until you can tell.',
    stopIf: START_STOP,
    ifNot: START_NOT,
    says: ['switch-on', 'thermostat-on'],
    when: { ...READY, switch: ['off'], waterDenied: ['yes'] },
    answers: startAnswers(),
    sources: ['practice', 'policy'],
  })
}

/** Oil only, and not for a tenant: the red button, once, when it has popped out. */
export function oilStart(next: string): GuideNode[] {
  const mayPress = { heatSource: ['oil'], tenure: ['own', 'let'] }
  return [
    look({
      id: 'oil-look',
      text: 'From a step back: does the red button of the oil unit stand out, or is its red light on?',
      when: mayPress,
      answers: [
        button('out', 'Yes', 'start-oil', { oilButton: 'out' }),
        button('in', 'No', next),
        button('unsure', 'Not sure', next),
        skip(next),
      ],
      sources: ['nora-oil', 'policy'],
    }),
    check({
      id: 'start-oil',
      action: 'reset',
      turnsOn: true,
      onlyIf: 'no one pressed it before, and there is no oil on the floor and no soot.',
      does: 'Set the thermostat to HEAT. Press the red button for one second, one time only.',
      time: 'about 10 minutes until you can tell.',
      stopIf: START_STOP,
      ifNot: 'never press it twice: oil fills the burner and may flash.',
      says: ['oil-button', 'thermostat-on'],
      when: { ...READY, ...mayPress, oilButton: ['out'], oilDenied: ['yes'] },
      answers: startAnswers(),
      sources: ['nora-oil', 'policy'],
    }),
  ]
}

export function startBatteries(otherwise: string): GuideNode {
  return check({
    id: 'start-batteries',
    action: 'thermostat',
    turnsOn: true,
    onlyIf: 'the tray opens by hand and the plate stays on the wall.',
    does: 'Put new batteries in, one time. When the screen is back, set it as you need it.',
    time: 'about 10 minutes until you can tell.',
    stopIf: START_STOP,
    ifNot: START_NOT,
    says: ['batteries', 'thermostat-on'],
    when: { ...READY, setting: ['blank'] },
    answers: [
      button('done', 'New ones are in', 'wait', STALE),
      button('none', 'It takes none, or I have none', 'no-power', { least: '2' }),
      button('trips', 'It came back, and went dead at once', 'trip-again', TRIPS),
      skip(otherwise),
    ],
    sources: ['practice', 'policy'],
  })
}

export function startEmergencyHeat(): GuideNode {
  return check({
    id: 'start-backup',
    action: 'thermostat',
    turnsOn: true,
    onlyIf: 'the thermostat has a setting called EMERGENCY HEAT or EM HEAT.',
    does: 'Set it to EM HEAT, one time. Leave the outdoor breaker as it is.',
    time: 'about 10 minutes until warm air comes.',
    stopIf: START_STOP,
    ifNot: START_NOT,
    says: ['emergency-heat', 'thermostat-on'],
    when: { ...READY, heatSource: ['heat-pump'], backup: ['wanted'] },
    answers: startAnswers(),
    sources: ['practice', 'policy'],
  })
}

/** Five minutes at least: some units blow cool air first, and a compressor must rest. */
export function waitThenGates(result: string, prefix = 'again', id = 'wait', minutes = 10): GuideNode[] {
  return [
    {
      id,
      kind: 'wait',
      minutes,
      text: `Wait ${minutes} minutes. Cool air at first is normal. Stay near, and listen. Is there a bang or a smell? Then do not wait.`,
      answers: [
        button('waited', 'The time is over', `${prefix}-gas`, {
          gasDenied: 'stale',
          coDenied: 'stale',
          fireDenied: 'stale',
          boomDenied: 'stale',
        }),
      ],
      sources: ['control-manuals', 'practice', 'policy'],
      reviewed: REVIEWED,
    },
    ...gatesAgain(prefix, result),
  ]
}

export function heatBack(text: string): Answer[] {
  return byRisk('warm', text, 'coldRisk', { low: ['heat-back', '0'], high: ['heat-back-watch', '2'] })
}

/** What came of a start: with a flame where fuel burns, without one elsewhere. */
export function heatResults(): GuideNode[] {
  const trips = button('trips', 'It tripped or went dead again', 'trip-again', { tripped: 'yes', least: '2' })
  const nothing = button('nothing', 'Nothing at all', 'no-start', { least: '2' })
  const bursts = button('bursts', 'Warm for minutes, then cool, again and again', 'bursts', { least: '2' })
  const weak = button('weak', 'It runs, with weak air or none', 'no-air', { least: '2' })
  return [
    question({
      id: 'result',
      text: 'What do you see and hear now, from where you stand?',
      when: { burnsFuel: ['yes'], delivery: ['ducted', 'room', 'unknown'] },
      answers: [
        ...heatBack('Steady warm air'),
        button('hum', 'A hum, and no whoosh', 'hum-only', { least: '2' }),
        button('click', 'It clicks or glows, and no whoosh', 'no-flame', { least: '2' }),
        button('dies', 'A whoosh, and it is out in seconds', 'flame-lost', { least: '2' }),
        bursts,
        weak,
        nothing,
        button('unsure', 'Not sure', 'still-cold', { least: '2' }),
        trips,
        skip('result-plain'),
      ],
      sources: ['control-manuals', 'practice'],
    }),
    question({
      id: 'result-plain',
      text: 'What do you feel and hear now, from where you stand?',
      answers: [
        ...heatBack('It gets warm, and stays so'),
        bursts,
        weak,
        nothing,
        button('unsure', 'Still cold, or not sure', 'still-cold', { least: '2' }),
        trips,
      ],
      sources: ['practice'],
    }),
  ]
}
