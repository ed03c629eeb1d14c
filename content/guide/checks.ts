import type { Answer, GuideNode, When } from '@/lib/guide/types'
import { button, check, look, question, skip } from './build'
import { coAgain } from './gates'

export const TRIPS = { resetUsed: 'yes', tripped: 'yes', least: '2' }

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
