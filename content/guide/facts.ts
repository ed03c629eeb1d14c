import type { FactDefinition, GuideNode } from '@/lib/guide/types'
import { button, question, skip } from './build'

/**
 * The first value of a fact from outside the walk stands for "nobody knows": the question is asked, or the stricter
 * text is shown. A "no" never spares a question; unknown tenure reads as rented, since tenants may do less.
 */
export const FACTS: FactDefinition[] = [
  { id: 'heatSource', values: ['unknown', 'gas', 'propane', 'oil', 'electric', 'heat-pump'], from: 'household' },
  { id: 'delivery', values: ['unknown', 'ducted', 'hydronic', 'ductless', 'room'], from: 'household' },
  { id: 'systems', values: ['several', 'one'], from: 'household' },
  { id: 'tenure', values: ['rent', 'own', 'let'], from: 'household' },
  { id: 'vulnerable', values: ['no', 'yes'], from: 'household' },
  { id: 'resetUsed', values: ['unknown', 'no', 'yes'], from: 'episode' },
  { id: 'tripped', values: ['no', 'yes'], from: 'episode' },
  { id: 'hazardSeen', values: ['no', 'leave', 'stop'], from: 'episode' },
  { id: 'presence', values: ['yes', 'no'], from: 'asked' },
  { id: 'burnsFuel', values: ['yes', 'no'], from: 'asked' },
  { id: 'coAlarm', values: ['works', 'none'], from: 'asked' },
  { id: 'coldRisk', values: ['yes', 'no'], from: 'asked' },
  { id: 'setting', values: ['right', 'wrong', 'blank'], from: 'asked' },
  { id: 'breaker', values: ['fine', 'tripped', 'unseen'], from: 'asked' },
  { id: 'switch', values: ['on', 'off'], from: 'asked' },
]

/** Which of several systems; when nobody is sure, nothing is taken as known about it. */
export function whichSystem(next: string, unsureSets: Record<string, string> = {}): GuideNode {
  return question({
    id: 'which-system',
    text: 'Is there more than one system? Which one has the trouble? What you said so far counts for all of them.',
    when: { systems: ['several'] },
    answers: [
      button('one', 'There is one, or it is the one named above', next, { systems: 'one' }),
      button('all', 'More than one has the trouble', next, { systems: 'one', ...unsureSets }),
      button('unsure', 'Not sure', next, { systems: 'one', ...unsureSets }),
      skip(next),
    ],
  })
}

/** Which system, what heats, how the heat gets to the rooms, and whether a CO alarm stands guard. */
export function systemFacts(next: string): GuideNode[] {
  return [
    whichSystem('heat-source', { heatSource: 'unknown', delivery: 'unknown' }),
    question({
      id: 'heat-source',
      fact: 'heatSource',
      text: 'What makes the heat in this system?',
      when: { heatSource: ['unknown'] },
      answers: [
        button('gas', 'Gas from the street', 'delivery', { heatSource: 'gas' }),
        button('propane', 'Propane from a tank', 'delivery', { heatSource: 'propane' }),
        button('oil', 'Oil', 'delivery', { heatSource: 'oil' }),
        button('electric', 'Electric heat', 'delivery', { heatSource: 'electric' }),
        button('heat-pump', 'A heat pump', 'delivery', { heatSource: 'heat-pump' }),
        button('unknown', 'I do not know', 'delivery', { heatSource: 'unknown' }),
        skip('delivery'),
      ],
    }),
    question({
      id: 'delivery',
      fact: 'delivery',
      text: 'How does it get to the rooms?',
      when: { delivery: ['unknown'] },
      answers: [
        button('ducted', 'Air through grilles', 'burns-fuel', { delivery: 'ducted' }),
        button('hydronic', 'Hot water or steam: radiators or warm floors', 'burns-fuel', { delivery: 'hydronic' }),
        button('ductless', 'A unit high on the wall that blows air', 'burns-fuel', { delivery: 'ductless' }),
        button('room', 'A heater in each room', 'burns-fuel', { delivery: 'room' }),
        button('unknown', 'I do not know', 'burns-fuel', { delivery: 'unknown' }),
        skip('burns-fuel'),
      ],
    }),
    question({
      id: 'burns-fuel',
      text: 'Some heat pumps burn gas, propane or oil when it is very cold. Does yours?',
      when: { heatSource: ['heat-pump'] },
      answers: [
        button('yes', 'Yes', 'co-alarm', { burnsFuel: 'yes' }),
        button('unsure', 'Not sure', 'co-alarm', { burnsFuel: 'yes' }),
        button('no', 'No, it is all electric', 'co-alarm', { burnsFuel: 'no' }),
        skip('co-alarm', { burnsFuel: 'no' }, { heatSource: ['electric'] }),
        skip('co-alarm', { burnsFuel: 'yes' }, { heatSource: ['gas', 'propane', 'oil', 'unknown'] }),
      ],
      sources: ['practice', 'policy'],
    }),
    question({
      id: 'co-alarm',
      text: 'Is there a CO alarm near the bedrooms, with a light on and no chirp?',
      when: { burnsFuel: ['yes'] },
      answers: [
        button('works', 'Yes, and it works', next, { coAlarm: 'works' }),
        button('none', 'No, or it does not work', 'no-co-alarm', { coAlarm: 'none', least: '2' }),
        button('unsure', 'Not sure', 'no-co-alarm', { coAlarm: 'none', least: '2' }),
        skip(next),
      ],
      sources: ['nfpa-alarms', 'epa-co', 'policy'],
    }),
  ]
}

const VULNERABLE =
  'Is there a baby under 1, or someone over 65? Is anyone pregnant, ill or disabled? Does anyone need a device to live?'

/** Sets `coldRisk`: with it no outcome is less than urgent. */
export function coldFacts(next: string): GuideNode[] {
  return [
    question({
      id: 'vulnerable',
      text: VULNERABLE,
      when: { vulnerable: ['no'] },
      answers: [
        button('yes', 'Yes', 'indoor', { vulnerable: 'yes', coldRisk: 'yes' }),
        button('unsure', 'Not sure', 'indoor', { vulnerable: 'yes', coldRisk: 'yes' }),
        button('no', 'No, none', 'indoor', { coldRisk: 'no' }),
        skip('indoor', { coldRisk: 'yes' }),
      ],
      sources: ['nia-cold', 'cdc-cold'],
    }),
    question({
      id: 'indoor',
      text: 'How warm is it inside now?',
      answers: [
        button('68-up', '68 °F (20 °C) or more', next),
        button('60-67', '60 to 67 °F (16 to 19 °C)', next),
        button('cold', 'Less than 60 °F (16 °C)', next, { coldRisk: 'yes' }),
        button('unsure', 'Not sure', next, { coldRisk: 'yes' }),
      ],
      sources: ['nia-cold', 'ipmc-heat', 'policy'],
    }),
  ]
}

/** Sets `vulnerable`: with it lost cooling is urgent. */
export function heatFacts(next: string): GuideNode[] {
  return [
    question({
      id: 'vulnerable',
      text: VULNERABLE,
      when: { vulnerable: ['no'] },
      answers: [
        button('yes', 'Yes', next, { vulnerable: 'yes' }),
        button('unsure', 'Not sure', next, { vulnerable: 'yes' }),
        button('no', 'No, none', next),
        skip(next),
      ],
      sources: ['cdc-heat'],
    }),
  ]
}
