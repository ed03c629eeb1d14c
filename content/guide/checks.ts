import type { Answer, GuideNode, When } from '@/lib/guide/types'
import { button, check, look, question, REVIEWED, skip } from './build'
import { coAgain, gatesAgain } from './opening'

const STALE = {
  resetUsed: 'yes',
  gasDenied: 'stale',
  coDenied: 'stale',
  fireDenied: 'stale',
  boomDenied: 'stale',
}

const TRIPS = { resetUsed: 'yes', tripped: 'yes', least: '2' }

/** One answer, two outcomes: the urgent one where cold or heat can hurt someone. */
export function byRisk(
  id: string,
  text: string,
  mark: 'coldRisk' | 'vulnerable',
  outcomes: { low: [string, string]; high: [string, string] },
): Answer[] {
  return [
    button(id, text, outcomes.low[0], { least: outcomes.low[1] }, { [mark]: ['no'] }),
    button(id, text, outcomes.high[0], { least: outcomes.high[1] }, { [mark]: ['yes'] }),
  ]
}

/** The one start of an episode: spent by anyone, at any time since the trouble began. Unknown is spent. */
export function oneStart(
  next: string,
  usedUp: { to: string; least: string }[] = [{ to: 'used-up', least: '2' }],
): GuideNode {
  const [low, high] = usedUp
  function spent(id: string, text: string, extra: When = {}): Answer[] {
    if (low === undefined) throw new Error('oneStart needs an outcome')
    const sets = { resetUsed: 'yes' }
    if (high === undefined) return [button(id, text, low.to, { ...sets, least: low.least }, extra)]
    return [
      button(id, text, low.to, { ...sets, least: low.least }, { ...extra, vulnerable: ['no'] }),
      button(id, text, high.to, { ...sets, least: high.least }, { ...extra, vulnerable: ['yes'] }),
    ]
  }
  return question({
    id: 'used',
    text: 'Since the trouble began, has anyone reset a breaker, turned it off and on, or pressed a red button? Ask the others at home.',
    when: { resetUsed: ['no', 'unknown'], tripped: ['no'] },
    answers: [
      ...spent('yes', 'Yes, once'),
      button('again', 'Yes, and it tripped or stopped again', 'trip-again', TRIPS),
      ...spent('unsure', 'Not sure'),
      button('no', 'No, no one has', next, { resetUsed: 'no' }),
      button('skip', 'Not asked', 'trip-again', { least: '2' }, { tripped: ['yes'] }),
      ...spent('skip', 'Not asked', { tripped: ['no'] }),
    ],
    sources: ['control-manuals', 'nora-oil', 'utility-electric', 'policy'],
  })
}

/** Turns everything off once, before all the checks. */
export function offOnce(next: string, when?: When): GuideNode {
  return check({
    id: 'off',
    action: 'thermostat',
    onlyIf: 'you can reach the thermostat with dry hands.',
    does: 'Set it to OFF, and the fan to AUTO. Leave it off until all checks are done.',
    time: 'about 5 minutes, until the unit is quiet.',
    stopIf: 'you smell, hear or feel something new.',
    ifNot: 'leave it, and call a licensed technician.',
    says: ['thermostat-off', 'phone-here'],
    answers: [
      button('done', 'It is off and quiet', next),
      button('cannot', 'I can not turn it off', 'cannot-check', { least: '2' }),
      ...(when ? [skip('cannot-check', { least: '2' })] : []),
    ],
    ...(when && { when }),
  })
}

export function filterCheck(next: string): GuideNode {
  return check({
    id: 'filter',
    action: 'filter',
    onlyIf: 'it is off, you need no tool, and your feet are on the floor. If you rent, your lease must allow it.',
    does: 'Slide the filter out of its grille or outside slot. Hold it to a lamp, never to a flame. Is it dark? Put in a new one, arrow the way the air goes.',
    time: 'about 10 minutes.',
    stopIf: 'it sits behind a cover of the unit, it is stuck, or it is wet.',
    ifNot: 'put the old one back, and go on.',
    says: ['filter'],
    when: { delivery: ['ducted'] },
    answers: [
      button('clean', 'Light comes through: I put it back', next),
      button('changed', 'It was dark: a new one is in', next),
      button('dark', 'It is dark, and I have no new one', next),
      button('cannot', 'I can not reach it', next),
      skip(next),
    ],
    sources: ['doe-saver', 'practice', 'policy'],
  })
}

/** Grilles where there are ducts; anything else only gets room around it. */
export function airChecks(next: string): GuideNode[] {
  return [
    check({
      id: 'grilles',
      action: 'air-path',
      onlyIf: 'you can do it from the floor.',
      does: 'Open each grille in the rooms. Move rugs, beds and boxes away from them.',
      time: 'about 10 minutes.',
      stopIf: 'a grille is hot, wet or sharp.',
      ifNot: 'leave that one, and note the room.',
      says: ['registers', 'clear-space'],
      when: { delivery: ['ducted'] },
      answers: [button('done', 'All are open and free', next), button('cannot', 'Some stay shut', next), skip('space')],
      sources: ['doe-saver', 'practice'],
    }),
    check({
      id: 'space',
      action: 'air-path',
      onlyIf: 'it is off and not hot.',
      does: 'Move curtains, chairs and boxes away from each heater or wall unit.',
      time: 'about 5 minutes.',
      stopIf: 'something is scorched, or smells burnt.',
      ifNot: 'leave it, and note the room.',
      says: ['clear-space'],
      when: { delivery: ['hydronic', 'ductless', 'room', 'unknown'] },
      answers: [
        button('done', 'There is room around each one', next),
        button('cannot', 'I can not move it', next),
        skip(next),
      ],
      sources: ['cpsc-heaters', 'practice'],
    }),
  ]
}

/** Snow or leaves at an outside vent, from the ground and by hand. Then CO is asked again. */
export function ventChecks(next: string): GuideNode[] {
  return [
    look({
      id: 'vent',
      text: 'Look from the ground outside. Is a vent pipe of the heat blocked by snow or leaves? Do not climb.',
      when: { burnsFuel: ['yes'] },
      answers: [
        button('free', 'No, it is free', next),
        button('none', 'I see no such pipe', next),
        button('loose', 'Yes, loose snow or leaves', 'vent-clear', { vent: 'loose' }),
        button('ice', 'Yes: ice in it, or out of reach', 'vent-blocked', { least: '2' }),
        skip(next),
      ],
      sources: ['nfpa-vents', 'policy'],
    }),
    check({
      id: 'vent-clear',
      action: 'air-path',
      onlyIf: 'you stand on firm ground, the heat is off, and a CO alarm works.',
      does: 'Brush loose snow or leaves away from the pipe by hand.',
      time: 'about 10 minutes.',
      stopIf: 'there is ice in the pipe, or anyone feels ill.',
      ifNot: 'leave the heat off, and call a licensed technician.',
      says: ['vent-clearing', 'phone-here'],
      when: { vent: ['loose'], coAlarm: ['works'] },
      answers: [
        button('done', 'It is free', 'vent-co'),
        button('cannot', 'I can not clear it', 'vent-blocked', { least: '2' }),
        skip('vent-blocked', { least: '2' }),
      ],
      sources: ['nfpa-vents', 'epa-co', 'policy'],
    }),
    coAgain('vent-co', next),
  ]
}

/** Looks at the box from a step back, then at the switch; `next` is reached with nothing found. */
export function powerLooks(next: string, withSwitch: boolean): GuideNode[] {
  const after = withSwitch ? 'switch' : next
  const box = look({
    id: 'breaker',
    text: 'Look at the breaker box from a step back. Is the breaker of this unit at OFF or in the middle?',
    answers: [
      button('fine', 'No, all are at ON', after, { breaker: 'fine' }),
      button('tripped', 'Yes, it is', 'start-breaker', { breaker: 'tripped' }),
      button('cannot', 'It is locked, shared, has fuses, or I can not tell', after, { breaker: 'unseen' }),
      button('wet', 'The floor there is wet', 'stop-water', { waterDenied: 'no', hazardSeen: 'stop', least: '2' }),
      button('bad', 'It is hot, buzzes or smells', 'emergency-fire', {
        fireDenied: 'no',
        hazardSeen: 'leave',
        least: '3',
      }),
    ],
    sources: ['utility-electric', 'practice', 'policy'],
  })
  if (!withSwitch) return [box]
  return [
    box,
    look({
      id: 'switch',
      text: 'Near the unit there may be a switch like one for a light. Is it at OFF?',
      answers: [
        button('on', 'No, it is at ON', next, { switch: 'on' }),
        button('none', 'I see none, or can not get there', next, { switch: 'on' }),
        button('off', 'Yes, and I know it was by mistake', 'start-switch', { switch: 'off' }),
        button('meant', 'Yes, someone may have meant it', 'stop-tag', { hazardSeen: 'stop', least: '2' }),
        button('unsure', 'Not sure', 'stop-tag', { hazardSeen: 'stop', least: '2' }),
      ],
      sources: ['practice', 'policy'],
    }),
  ]
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
