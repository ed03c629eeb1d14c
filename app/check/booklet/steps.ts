import { FLOWS } from '@/content/guide/flows'
import type { Answer, Flow, GuideNode, When } from '@/lib/guide/types'

/** Every outcome once, in the order in which the flows first reach them: the endings of the booklet. */
export const ENDINGS: GuideNode[] = [
  ...new Map(
    FLOWS.flatMap(({ nodes }) => nodes.filter(({ kind }) => kind === 'outcome')).map((node) => [node.id, node]),
  ).values(),
]

/** The steps of a flow that are not endings, numbered from 1 in this order. */
export function stepsOf(flow: Flow): GuideNode[] {
  return flow.nodes.filter(({ kind }) => kind !== 'outcome')
}

/** Where an answer leads: `step 7`, or `Ending 12`. */
export function goesTo(flow: Flow, to: string): string {
  const step = stepsOf(flow).findIndex(({ id }) => id === to)
  if (step >= 0) return `step ${step + 1}`
  const ending = ENDINGS.findIndex(({ id }) => id === to)
  if (ending < 0) throw new Error(`flow ${flow.id}: ${to} is nowhere`)
  return `Ending ${ending + 1}`
}

export interface PrintedAnswer {
  text: string
  where: string
}

/** The answers as printed: those of one wording that differ by what is known name what it depends on. */
export function printedAnswers(flow: Flow, node: GuideNode): PrintedAnswer[] {
  const answers = (node.answers ?? []).filter(({ id }) => id !== 'skip')
  return answers.map((answer) => {
    const known = conditionInWords(answer.when)
    return { text: known === '' ? answer.text : `${answer.text} (if ${known})`, where: goesTo(flow, answer.to) }
  })
}

/** When a step is passed over, and where to: on paper a person must be told. */
export function printedSkips(flow: Flow, node: GuideNode): string[] {
  if (node.when === undefined) return []
  const only = conditionInWords(node.when)
  const skips = (node.answers ?? []).filter(({ id }) => id === 'skip')
  return skips.map((skip: Answer) => {
    const known = conditionInWords(skip.when)
    return `Only if ${only}. If not${known === '' ? '' : `, and ${known}`}: ${goesTo(flow, skip.to)}.`
  })
}

const FACTS: Record<string, [name: string, values?: Record<string, string>]> = {
  hazardSeen: ['a hazard met before', { no: 'none', stop: 'one that stops the checks', leave: 'one to leave for' }],
  systems: ['the number of systems'],
  heatSource: ['the heat'],
  delivery: ['the way to the rooms'],
  burnsFuel: ['it burns fuel'],
  vulnerable: ['someone who can not stand cold or heat'],
  resetUsed: ['the one start is used'],
  tripped: ['it tripped or stopped after a start'],
  setting: ['the thermostat is'],
  vent: ['the vent has snow or leaves that are'],
  coAlarm: ['the CO alarm'],
  gasDenied: ['no gas smell'],
  coDenied: ['no CO alarm, no one ill'],
  fireDenied: ['no smoke, no burnt smell'],
  boomDenied: ['no bang, no soot'],
  waterDenied: ['no water near electric parts'],
  oilDenied: ['no spilled oil'],
  tenure: ['you', { own: 'own the home', rent: 'rent', let: 'let the home' }],
  oilButton: ['the red button is'],
  breaker: ['the breaker is'],
  switch: ['the switch is'],
  coldRisk: ['cold can hurt someone there'],
  pattern: ['it runs for'],
  ice: ['ice'],
  where: ['the water is at the'],
  needed: ['heat or cooling is needed now'],
  noise: ['the noise is like'],
  backup: ['the backup heat is'],
  runs: ['it runs'],
}

/** `{ burnsFuel: ['yes'] }` is `it burns fuel: yes`. Throws on a fact that the booklet has no words for. */
export function conditionInWords(when: When | undefined): string {
  return Object.entries(when ?? {})
    .map(([fact, values]) => {
      const [name, words] = FACTS[fact] ?? []
      if (name === undefined) throw new Error(`the booklet has no words for ${fact}`)
      if (fact.endsWith('Denied')) return name
      return `${name}: ${values.map((value) => words?.[value] ?? value.replaceAll('-', ' ')).join(' or ')}`
    })
    .join('; ')
}
