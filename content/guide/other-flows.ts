import type { GuideNode } from '@/lib/guide/types'
import { button, check, look, question, skip } from './build'
import { airChecks, byRisk, filterCheck, offOnce, oneStart, powerLooks } from './checks'
import { heatFacts, systemFacts, whichSystem } from './facts'
import { coverLook, opening } from './opening'
import { startBreaker, startSwitch, startThermostat, waitThenGates } from './starts'

const TRIPPED = button('trips', 'It tripped or went dead again', 'trip-again', { tripped: 'yes', least: '2' })

export const NO_COOLING: GuideNode[] = [
  ...opening({ season: 'hot', far: 'far-visit-soon', next: 'cover' }),
  coverLook('which-system'),
  ...systemFacts('vulnerable'),
  ...heatFacts('used'),
  oneStart('ice', [
    { to: 'cooling-stop', least: '1' },
    { to: 'no-cooling-today', least: '2' },
  ]),
  look({
    id: 'ice',
    text: 'Is there ice or frost on the indoor unit, or on a pipe that goes to it? Look from a step back.',
    answers: [
      ...byRisk('yes', 'Yes', 'vulnerable', { low: ['iced-coil', '1'], high: ['no-cooling-today', '2'] }),
      ...byRisk('unsure', 'Not sure', 'vulnerable', { low: ['iced-coil', '1'], high: ['no-cooling-today', '2'] }),
      button('no', 'No', 'off', { ice: 'no' }),
    ],
    sources: ['doe-saver', 'practice'],
  }),
  offOnce('filter', { ice: ['no'] }),
  filterCheck('grilles'),
  ...airChecks('outdoor'),
  check({
    id: 'outdoor',
    action: 'air-path',
    onlyIf: 'the thermostat is at OFF, and you stand on firm ground.',
    does: 'Move leaves, toys and chairs 2 feet (60 cm) away from the outdoor unit.',
    time: 'about 10 minutes.',
    stopIf: 'something sits inside the unit.',
    ifNot: 'leave it, and go on.',
    says: ['clear-space'],
    answers: [button('done', 'It has room', 'breaker'), button('cannot', 'I can not get there', 'breaker')],
    sources: ['doe-saver', 'practice'],
  }),
  ...powerLooks('start', true),
  startThermostat('cool', { ice: ['no'] }),
  startBreaker('cool'),
  startSwitch('cool'),
  ...waitThenGates('result'),
  question({
    id: 'result',
    text: 'How is the air at a grille or at the wall unit now?',
    answers: [
      button('cold', 'Cold, and it stays so', 'cooling-back', { least: '0' }),
      ...byRisk('warm', 'Still warm, or no air', 'vulnerable', {
        low: ['no-cooling', '1'],
        high: ['no-cooling-today', '2'],
      }),
      ...byRisk('unsure', 'Not sure', 'vulnerable', { low: ['no-cooling', '1'], high: ['no-cooling-today', '2'] }),
      TRIPPED,
    ],
  }),
]

export const WEAK_AIR: GuideNode[] = [
  ...opening({ season: 'any', far: 'far-visit-soon', next: 'cover' }),
  coverLook('which-system'),
  ...systemFacts('used'),
  oneStart('ice', [{ to: 'air-spent', least: '1' }]),
  look({
    id: 'ice',
    text: 'Is there ice or frost on the indoor unit, or on a pipe that goes to it? Look from a step back.',
    answers: [
      button('yes', 'Yes', 'iced-coil', { least: '1' }),
      button('unsure', 'Not sure', 'iced-coil', { least: '1' }),
      button('no', 'No', 'off', { ice: 'no' }),
    ],
    sources: ['doe-saver', 'practice'],
  }),
  offOnce('filter', { ice: ['no'] }),
  filterCheck('grilles'),
  ...airChecks('start'),
  startThermostat('back', { ice: ['no'] }),
  ...waitThenGates('result'),
  question({
    id: 'result',
    text: 'How is the air now?',
    answers: [
      button('better', 'Clearly better', 'air-back', { least: '0' }),
      button('same', 'The same, or not sure', 'air-visit', { least: '1' }),
      TRIPPED,
    ],
  }),
]

export const WATER: GuideNode[] = [
  ...opening({ season: 'any', far: 'far-visit', next: 'which-system' }),
  whichSystem('season'),
  question({
    id: 'season',
    text: 'Would the home get cold or far too hot with the unit off?',
    answers: [
      button('yes', 'Yes', 'where', { needed: 'yes' }),
      button('unsure', 'Not sure', 'where', { needed: 'yes' }),
      button('no', 'No', 'where', { needed: 'no' }),
    ],
    sources: ['nia-cold', 'policy'],
  }),
  look({
    id: 'where',
    text: 'From a dry spot, where does the water come from?',
    answers: [
      button('boiler', 'A boiler, a radiator or a hot pipe', 'leak-today', { least: '2' }),
      button('unit', 'The air unit, its pan or its drain', 'off', { where: 'unit' }),
      button('outdoor', 'It only drips from the outdoor unit', 'drip-normal', { least: '0' }),
      button('unsure', 'Not sure', 'leak-today', { least: '2' }),
    ],
  }),
  check({
    id: 'off',
    action: 'thermostat',
    onlyIf: 'the thermostat and the floor at it are dry.',
    does: 'Set it to OFF, and leave it off.',
    time: 'about 1 minute.',
    stopIf: 'the water rises, or you feel a tingle.',
    ifNot: 'leave it, and call a licensed technician.',
    says: ['thermostat-off', 'phone-here'],
    when: { where: ['unit'] },
    answers: [
      button('done', 'It is off', 'drain-visit', { least: '1' }, { needed: ['no'] }),
      button('done', 'It is off', 'drain-today', { least: '2' }, { needed: ['yes'] }),
      button('cannot', 'I can not turn it off', 'drain-today', { least: '2' }),
      skip('leak-today', { least: '2' }),
    ],
  }),
]

export const NOISE: GuideNode[] = [
  ...opening({ season: 'any', far: 'far-visit-soon', next: 'which-system' }),
  whichSystem('noise'),
  question({
    id: 'noise',
    text: 'What is the noise like? The start-up watcher can help you to time it.',
    answers: [
      button('tick', 'Ticks or a soft pop of metal, once the fan blows', 'noise-normal', { least: '0' }),
      button('bang', 'A bang or boom as the burner lights', 'stop-boom', {
        boomDenied: 'no',
        hazardSeen: 'stop',
        least: '2',
      }),
      button('buzz', 'A sizzle or an electric buzz', 'emergency-fire', {
        fireDenied: 'no',
        hazardSeen: 'leave',
        least: '3',
      }),
      button('metal', 'A screech, a grind or a loud clank', 'off', { noise: 'metal' }),
      button('rattle', 'A rattle, a hum, a gurgle or a knock in pipes', 'noise-visit', { least: '1' }),
      button('unsure', 'Not sure', 'stop-boom', { boomDenied: 'no', hazardSeen: 'stop', least: '2' }),
    ],
    sources: ['practice', 'policy'],
  }),
  check({
    id: 'off',
    action: 'thermostat',
    onlyIf: 'you can reach the thermostat with dry hands.',
    does: 'Set it to OFF, and leave it off.',
    time: 'about 1 minute.',
    stopIf: 'there is smoke, a spark or a smell.',
    ifNot: 'leave it, and call a licensed technician.',
    says: ['thermostat-off', 'phone-here'],
    when: { noise: ['metal'] },
    answers: [
      button('done', 'It is off', 'noise-today', { least: '2' }),
      button('cannot', 'I can not turn it off', 'noise-today', { least: '2' }),
      skip('noise-today', { least: '2' }),
    ],
  }),
]

export const ALARM: GuideNode[] = [
  ...opening({ season: 'any', far: 'far-visit', next: 'sound' }),
  question({
    id: 'sound',
    text: 'What did the alarm do?',
    answers: [
      button('four', 'Four loud beeps, again and again, now or before', 'emergency-co', {
        coDenied: 'no',
        hazardSeen: 'leave',
        least: '3',
      }),
      button('three', 'Three loud beeps, again and again, now or before', 'emergency-fire', {
        fireDenied: 'no',
        hazardSeen: 'leave',
        least: '3',
      }),
      button('chirp', 'One short chirp each half minute or so, and all are well', 'alarm-chirp', { least: '1' }),
      button('unsure', 'Something else, or not sure', 'emergency-co', {
        coDenied: 'no',
        hazardSeen: 'leave',
        least: '3',
      }),
    ],
    sources: ['nfpa-alarms', 'policy'],
  }),
]
