import type { GuideNode } from '@/lib/guide/types'
import { gate, printed } from './build'
import { HAZARD_TEXTS } from './hazards'

const GAS_QUESTION =
  'Do you smell gas? It may be like rotten eggs. A faint smell counts. One that comes and goes counts too.'
const CO_QUESTION =
  'Is a CO alarm going off, with four loud beeps again and again? Or does someone have a bad head, feel dizzy, sick, weak or confused? Feeling better outdoors is a sign too.'
const FIRE_QUESTION =
  'Is there smoke, a flame or a spark? A burnt, fishy or plastic smell? A buzz, or a breaker box that is hot?'
const BOOM_QUESTION =
  'Was there a bang or boom when the burner lit? Is there soot, a burn mark, or flame where it should not be?'

export function gasGate(id: string, no: string): GuideNode {
  const node = gate({
    id,
    hazard: 'gas',
    text: GAS_QUESTION,
    yes: 'emergency-gas',
    no,
    noText: 'No gas smell here',
    yesText: `Yes: ${HAZARD_TEXTS.gas.text}`,
    closes: 'leave',
    least: '3',
    sources: HAZARD_TEXTS.gas.sources,
  })
  const [yes, unsure, deny] = node.answers ?? []
  if (!yes || !unsure || !deny) throw new Error('a gas gate has three answers')
  // Read on the spot by someone who must not tap: the words of both answers are the instruction itself.
  return {
    ...node,
    answers: [yes, printed('unsure', 'Not sure counts as yes. Get everyone out now.', unsure.to, unsure.sets), deny],
  }
}

export function coGate(id: string, no: string): GuideNode {
  return gate({
    id,
    hazard: 'co',
    text: CO_QUESTION,
    yes: 'emergency-co',
    no,
    noText: 'No alarm, and no one feels ill',
    yesText: 'Yes, an alarm or one of these',
    closes: 'leave',
    least: '3',
    sources: HAZARD_TEXTS.co.sources,
  })
}

export function fireGate(id: string, no: string): GuideNode {
  return gate({
    id,
    hazard: 'fire',
    text: FIRE_QUESTION,
    yes: 'emergency-fire',
    no,
    noText: 'No, none of these',
    yesText: 'Yes, one of these',
    closes: 'leave',
    least: '3',
    sources: HAZARD_TEXTS.fire.sources,
  })
}

export function boomGate(id: string, no: string): GuideNode {
  return gate({
    id,
    hazard: 'boom',
    text: BOOM_QUESTION,
    yes: 'stop-boom',
    no,
    noText: 'No, none of these',
    yesText: 'Yes, one of these',
    closes: 'stop',
    least: '2',
    sources: HAZARD_TEXTS.boom.sources,
  })
}

/** After a start or a wait: gas, CO, fire and a bang are asked anew before anything else. */
export function gatesAgain(prefix: string, next: string): GuideNode[] {
  return [
    gasGate(`${prefix}-gas`, `${prefix}-co`),
    coGate(`${prefix}-co`, `${prefix}-fire`),
    fireGate(`${prefix}-fire`, `${prefix}-boom`),
    boomGate(`${prefix}-boom`, next),
  ]
}

/** Clearing a vent means that its exhaust was blocked. */
export function coAgain(id: string, next: string): GuideNode {
  return coGate(id, next)
}
