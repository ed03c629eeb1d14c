import type { GuideNode } from '@/lib/guide/types'
import { button, gate, look, question, skip } from './build'
import { boomGate, coGate, fireGate, gasGate } from './gates'
import { HAZARD_TEXTS } from './hazards'

/** What hurts people in this flow: it words the question about them. */
export type Season = 'cold' | 'hot' | 'any'

const PEOPLE = {
  cold: {
    text: 'Is someone very sleepy, confused, slow to talk, or hard to wake? Cold can do that, and so can bad air.',
    ill: 'emergency-cold',
  },
  hot: {
    text: 'Is someone very hot and confused, faint, or no longer sweating? Heat can do that, and so can bad air.',
    ill: 'emergency-heat-ill',
  },
  any: {
    text: 'Is someone ill, confused, faint, or hard to wake? Is someone far too cold or too hot?',
    ill: 'emergency-ill',
  },
}

/** The first question is about gas, also for someone who is not there and can not smell it. */
function elsewhere(node: GuideNode): GuideNode {
  return { ...node, text: `${node.text} Are you far from that home? Go on: it is asked next.` }
}

interface OpeningParts {
  season: Season
  far: 'far-visit' | 'far-visit-soon'
  next: string
}

/** Every flow begins here. Those that empty the home come first, so that a second hazard never lowers what is said. */
export function opening({ season, far, next }: OpeningParts): GuideNode[] {
  const fire = fireGate('fire', 'flood')
  const dusty = button('dust', 'Only a dusty smell, and the heat ran for the first time this season', 'dust')
  return [
    elsewhere(gasGate('gas', 'presence')),
    question({
      id: 'presence',
      text: 'Are you in the home with the trouble right now? From far away, no one can smell or hear it.',
      answers: [
        button('yes', 'Yes, I am in the home', 'co', { presence: 'yes' }),
        button('no', 'No, I am somewhere else', 'far-hazards', { presence: 'no' }),
      ],
    }),
    question({
      id: 'far-hazards',
      text: 'Ask someone who is there. Is there a gas smell, a CO alarm, smoke, a flood, steam or a person who is ill?',
      when: { hazardSeen: ['no', 'stop'] },
      answers: [
        button('yes', 'Yes, one of these', 'far-emergency', { hazardSeen: 'leave', least: '3' }),
        button('unsure', 'They are not sure, or I can not reach them', 'far-emergency', {
          hazardSeen: 'leave',
          least: '3',
        }),
        button('no', 'They say no to each of these', far, { least: far === 'far-visit' ? '2' : '1' }),
        button('empty', 'I know that no one is there', far, { least: far === 'far-visit' ? '2' : '1' }),
        skip('far-emergency', { least: '3' }),
      ],
    }),
    coGate('co', 'fire'),
    season === 'cold' ? { ...fire, answers: [...(fire.answers ?? []), dusty] } : fire,
    gate({
      id: 'dust',
      hazard: 'fire',
      text: 'Dust burns off the first day. Is there any smoke? Is the smell of plastic, rubber, fish or oil? Has it lasted more than half an hour?',
      yes: 'emergency-fire',
      no: 'flood',
      noText: 'No to all: just dust, and it fades',
      yesText: 'Yes, one of these',
      closes: 'leave',
      least: '3',
      sources: ['practice', 'policy'],
    }),
    gate({
      id: 'flood',
      hazard: 'flood',
      text: 'Is there flood water in the home, or is water rising?',
      yes: 'emergency-flood',
      no: 'steam',
      noText: 'No flood water',
      yesText: 'Yes, there is flood water',
      closes: 'leave',
      least: '3',
      sources: HAZARD_TEXTS.flood.sources,
    }),
    gate({
      id: 'steam',
      hazard: 'steam',
      text: 'Does steam or hot water come from a boiler, its pipes or a valve inside? Does it hiss?',
      yes: 'emergency-steam',
      no: 'people',
      noText: 'No, or there is no boiler',
      yesText: 'Yes, steam, hot water or a hiss',
      closes: 'leave',
      least: '3',
      sources: HAZARD_TEXTS.steam.sources,
    }),
    gate({
      id: 'people',
      hazard: 'people',
      text: PEOPLE[season].text,
      yes: 'fuel-today',
      no: 'before',
      noText: 'No, everyone is well',
      yesText: 'Yes, someone is',
      closes: 'stop',
      least: '3',
      sources: ['nia-cold', 'cdc-heat', 'epa-co', 'policy'],
    }),
    question({
      id: 'fuel-today',
      text: 'Did anything burn in or near the home today? A furnace, boiler, stove, fire, grill, car or engine?',
      answers: [
        button('yes', 'Yes', 'emergency-co', { coDenied: 'no', hazardSeen: 'leave', least: '3' }),
        button('unsure', 'Not sure', 'emergency-co', { coDenied: 'no', hazardSeen: 'leave', least: '3' }),
        button('no', 'No, nothing burned', PEOPLE[season].ill, { least: '3' }),
      ],
      sources: ['epa-co', 'nia-cold', 'policy'],
    }),
    question({
      id: 'before',
      text: 'Since this trouble began, was there a gas smell, a CO alarm or smoke? A flood or steam? Has no crew cleared it?',
      when: { hazardSeen: ['no'] },
      answers: [
        button('yes', 'Yes, one of these', 'not-cleared', { hazardSeen: 'leave', least: '3' }),
        button('unsure', 'Not sure', 'not-cleared', { hazardSeen: 'leave', least: '3' }),
        button('no', 'No, or a crew has cleared the home', 'shock'),
        skip('not-cleared', { least: '3' }, { hazardSeen: ['leave'] }),
        skip('shock', undefined, { hazardSeen: ['stop'] }),
      ],
    }),
    gate({
      id: 'shock',
      hazard: 'shock',
      text: 'Did someone feel a tingle or a shock from the unit, a pipe or a metal part?',
      yes: 'stop-shock',
      no: 'water',
      noText: 'No tingle, no shock',
      yesText: 'Yes, someone did',
      closes: 'stop',
      least: '2',
      sources: HAZARD_TEXTS.shock.sources,
    }),
    gate({
      id: 'water',
      hazard: 'water',
      text: 'Is there water on the unit, a cord, an outlet or the breaker box? Is the floor wet near one of them?',
      yes: 'stop-water',
      no: 'wet-before',
      noText: 'No water near electric parts',
      yesText: 'Yes, there is water',
      closes: 'stop',
      least: '2',
      sources: HAZARD_TEXTS.water.sources,
    }),
    gate({
      id: 'wet-before',
      hazard: 'flood',
      text: 'Was the unit ever under water, and no pro has looked at it since?',
      yes: 'stop-wet-before',
      no: 'boom',
      noText: 'No, it stayed dry',
      yesText: 'Yes, it was under water',
      closes: 'stop',
      least: '2',
      sources: ['gama-flood', 'nema-flood', 'policy'],
    }),
    boomGate('boom', 'oil'),
    gate({
      id: 'oil',
      hazard: 'oil',
      text: 'Is there spilled heating oil, or a strong smell of oil?',
      yes: 'stop-oil',
      no: 'tag',
      noText: 'No oil, or we have no oil heat',
      yesText: 'Yes, oil or an oil smell',
      closes: 'stop',
      least: '2',
      sources: HAZARD_TEXTS.oil.sources,
    }),
    question({
      id: 'tag',
      text: 'Has a professional or the landlord shut it off, or left a tag on it? Or was there a bang that no one has looked into?',
      when: { hazardSeen: ['no'] },
      answers: [
        button('yes', 'Yes, one of these', 'stop-tag', { hazardSeen: 'stop', least: '2' }),
        button('unsure', 'Not sure', 'stop-tag', { hazardSeen: 'stop', least: '2' }),
        button('no', 'No, none of these', next),
        skip('stop-tag', { least: '2' }),
      ],
    }),
  ]
}

/** A cover that is loose is told, never pressed: older units run without one. */
export function coverLook(next: string): GuideNode {
  return look({
    id: 'cover',
    text: 'From a step back: is each cover of the unit in its place? Do not touch it.',
    answers: [
      button('shut', 'Yes, all in place', next),
      button('hidden', 'The unit is locked away, or there is none', next),
      button('off', 'No, one is loose or off', 'cover-off', { least: '2' }),
      button('unsure', 'Not sure', 'cover-off', { least: '2' }),
    ],
    sources: ['ahri-panels', 'policy'],
  })
}
