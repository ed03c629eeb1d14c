import type { GuideNode } from '@/lib/guide/types'
import { button, look, question, skip } from './build'
import { airChecks, byRisk, filterCheck, offOnce, oneStart, powerLooks, ventChecks } from './checks'
import { coldFacts, systemFacts } from './facts'
import { coverLook, opening } from './opening'
import {
  heatBack,
  heatResults,
  oilStart,
  startBatteries,
  startBreaker,
  startEmergencyHeat,
  startSwitch,
  startThermostat,
  waitThenGates,
} from './starts'

const COLD_OPENING = opening({ season: 'cold', far: 'far-visit', next: 'cover' })
const COLD_FACTS = [...COLD_OPENING, coverLook('which-system'), ...systemFacts('vulnerable'), ...coldFacts('used')]
const AFTER_START = [...waitThenGates('result'), ...heatResults()]

export const NO_HEAT: GuideNode[] = [
  ...COLD_FACTS,
  oneStart('setting'),
  look({
    id: 'setting',
    text: 'Look at the thermostat. Is it on HEAT, and set higher than the room? Is no timer or hold in the way?',
    answers: [
      button('right', 'Yes, it is set right', 'off', { setting: 'right' }),
      button('wrong', 'No, it was set wrong', 'start', { setting: 'wrong' }),
      button('blank', 'The screen is blank', 'breaker', { setting: 'blank' }),
      button('unsure', 'Not sure', 'off', { setting: 'right' }),
    ],
  }),
  offOnce('filter', { setting: ['right'] }),
  filterCheck('grilles'),
  ...airChecks('vent'),
  ...ventChecks('breaker'),
  ...powerLooks('start-batteries', true),
  startBatteries('oil-look'),
  ...oilStart('start'),
  startThermostat('heat', { setting: ['right', 'wrong'] }),
  startBreaker('heat'),
  startSwitch('heat'),
  ...AFTER_START,
]

export const BURSTS: GuideNode[] = [
  ...COLD_FACTS,
  question({
    id: 'pattern',
    text: 'Felt bursts of warm air point elsewhere than a flame that dies in seconds. Which one do you have?',
    answers: [
      button('seconds', 'It lights, is out in seconds, and the air stays cool', 'flame-lost', { least: '2' }),
      button('minutes', 'Warm air for minutes, then cool, again and again', 'off', { pattern: 'minutes' }),
      button('hum', 'A hum, and it never lights', 'hum-only', { least: '2' }),
      button('unsure', 'Not sure', 'comes-and-goes', { least: '2' }),
    ],
    sources: ['control-manuals', 'practice'],
  }),
  oneStart('pattern'),
  offOnce('filter', { pattern: ['minutes'] }),
  filterCheck('grilles'),
  ...airChecks('vent'),
  ...ventChecks('start'),
  startThermostat('heat', { pattern: ['minutes'] }),
  ...AFTER_START,
]

export const THERMOSTAT_BLANK: GuideNode[] = [
  ...COLD_FACTS,
  oneStart('pan'),
  look({
    id: 'pan',
    text: 'Is there water in the pan or tub under the indoor unit? Look from a step back.',
    answers: [
      button('dry', 'No, it is dry, or there is none', 'breaker', { setting: 'blank' }),
      button('full', 'Yes, there is water', 'no-power', { least: '2' }),
      button('unsure', 'Not sure', 'no-power', { least: '2' }),
    ],
  }),
  ...powerLooks('start-batteries', true),
  startBatteries('no-power'),
  startBreaker('back'),
  startSwitch('back'),
  ...AFTER_START,
]

export const POWER_CUT: GuideNode[] = [
  ...COLD_FACTS,
  question({
    id: 'power',
    text: 'Is the power back in the whole home?',
    answers: [
      button('yes', 'Yes', 'used'),
      button('no', 'No, or only in part', 'power-out', { least: '2' }),
      button('unsure', 'Not sure', 'power-out', { least: '2' }),
    ],
  }),
  oneStart('rest'),
  ...waitThenGates('runs', 'rest', 'rest'),
  question({
    id: 'runs',
    text: 'Does it heat by itself now? Or is it cooling, if that is what you need?',
    answers: [
      ...heatBack('Yes, it runs as it should'),
      button('no', 'No', 'outdoor-off', { runs: 'no' }),
      button('unsure', 'Not sure', 'still-cold', { least: '2' }),
    ],
    sources: ['control-manuals'],
  }),
  question({
    id: 'outdoor-off',
    text: 'Was the power off for more than an hour, in cold weather? The outdoor unit of a heat pump may need hours to warm.',
    when: { heatSource: ['heat-pump'] },
    answers: [
      button('yes', 'Yes', 'start-backup', { backup: 'wanted' }),
      button('unsure', 'Not sure', 'start-backup', { backup: 'wanted' }),
      button('no', 'No', 'off'),
      skip('off'),
    ],
    sources: ['practice', 'policy'],
  }),
  startEmergencyHeat(),
  offOnce('breaker', { runs: ['no'] }),
  ...powerLooks('oil-look', true),
  ...oilStart('start'),
  startThermostat('back', { runs: ['no'] }),
  startBreaker('back'),
  startSwitch('back'),
  ...AFTER_START,
]

export const OUTDOOR_ICE: GuideNode[] = [
  ...COLD_FACTS,
  oneStart('pattern'),
  look({
    id: 'pattern',
    text: 'Look at the outdoor unit from a step back. What do you see?',
    answers: [
      ...byRisk('steam', 'White steam for some minutes, no smell, and the home holds its heat', 'coldRisk', {
        low: ['defrost-normal', '0'],
        high: ['defrost-watch', '2'],
      }),
      button('ice', 'Ice that covers it, or ice that stays', 'start-backup', { backup: 'wanted' }),
      ...byRisk('summer', 'Ice or frost while it cools', 'coldRisk', {
        low: ['iced-coil', '1'],
        high: ['ice-visit', '2'],
      }),
      button('unsure', 'Not sure', 'ice-visit', { least: '2' }),
    ],
    sources: ['practice'],
  }),
  { ...startEmergencyHeat(), answers: withSkipTo(startEmergencyHeat(), 'ice-visit') },
  ...waitThenGates('result'),
  question({
    id: 'result',
    text: 'Is there warm air inside now?',
    answers: [
      button('warm', 'Yes', 'ice-visit', { least: '2' }),
      button('nothing', 'No, or not sure', 'still-cold', { least: '2' }),
      button('trips', 'It tripped or went dead again', 'trip-again', { tripped: 'yes', least: '2' }),
    ],
  }),
]

// Without emergency heat the ice is still for a technician.
function withSkipTo(node: GuideNode, to: string): GuideNode['answers'] {
  return node.answers?.map((answer) => (answer.to === 'cannot-check' ? { ...answer, to } : answer))
}
