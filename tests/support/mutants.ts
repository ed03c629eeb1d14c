import { getFlow } from '@/content/guide/flows'
import type { Answer, Flow, GuideNode, InstructionClass, Section } from '@/lib/guide/types'

/** A flow that can be broken without touching the real one. */
export class Draft {
  readonly flow: Flow
  constructor(id: string) {
    this.flow = structuredClone(getFlow(id))
  }
  node(id: string): GuideNode {
    const node = this.flow.nodes.find((each) => each.id === id)
    if (node === undefined) throw new Error(`no node ${id}`)
    return node
  }
  answers(node: string, id: string): Answer[] {
    const found = (this.node(node).answers ?? []).filter((answer) => answer.id === id)
    if (found.length === 0) throw new Error(`no answer ${node}.${id}`)
    return found
  }
  answer(node: string, id: string): Answer & { sets: Record<string, string> } {
    const [answer] = this.answers(node, id)
    if (answer === undefined) throw new Error(`no answer ${node}.${id}`)
    return Object.assign(answer, { sets: answer.sets ?? {} })
  }
  sections(node: string): Section[] {
    const { sections } = this.node(node)
    if (sections === undefined) throw new Error(`${node} has no sections`)
    return sections
  }
  section(node: string, slot: Section['slot']): Section {
    const section = this.sections(node).find((each) => each.slot === slot)
    if (section === undefined) throw new Error(`${node} has no ${slot}`)
    return section
  }
  drop(node: string, isDropped: (section: Section) => boolean) {
    this.node(node).sections = this.sections(node).filter((section) => !isDropped(section))
  }
  claim(node: string, name: InstructionClass) {
    this.node(node).says = [...(this.node(node).says ?? []), name]
  }
  lead(node: string, id: string, to: string) {
    for (const answer of this.answers(node, id)) answer.to = to
  }
  unguard(...ids: string[]) {
    for (const id of ids) {
      const node = this.node(id)
      delete node.when
      node.answers = (node.answers ?? []).filter((answer) => answer.id !== 'skip')
    }
  }
  say(node: string, text: string) {
    this.node(node).text += ` ${text}`
  }
}

export interface Mutant {
  invariant: number
  name: string
  flow: string
  break: (draft: Draft) => void
}

function mutant(invariant: number, name: string, flow: string, break_: (draft: Draft) => void): Mutant {
  return { invariant, name, flow, break: break_ }
}

/** At least three ways to break each invariant that the data can break, all edits of the real flows. */
export const MUTANTS: Mutant[] = [
  mutant(1, 'an answer leads nowhere', 'alarm', (d) => d.lead('sound', 'chirp', 'no-such-node')),
  mutant(1, 'the walk goes in a circle', 'alarm', (d) => d.lead('sound', 'chirp', 'gas')),
  mutant(1, 'a question has no answers', 'alarm', (d) => {
    d.node('sound').answers = []
  }),
  mutant(1, 'a conditional question has no skip', 'water', (d) => {
    const node = d.node('which-system')
    node.answers = (node.answers ?? []).filter((answer) => answer.id !== 'skip')
  }),
  mutant(1, 'two answers with one id hold at once', 'water', (d) => {
    for (const answer of d.answers('off', 'done')) delete answer.when
  }),
  mutant(1, 'an answer holds in no state', 'water', (d) => {
    d.answer('where', 'boiler').when = { needed: ['never'] }
  }),

  mutant(2, 'an action that is not on the list', 'water', (d) => {
    Object.assign(d.node('off'), { action: 'gas-valve' })
  }),
  mutant(2, 'asks to open the front panel', 'water', (d) => d.say('where', 'Open the front panel of the unit.')),
  mutant(2, 'asks to relight, politely', 'water', (d) => d.say('drain-visit', 'Would you please light the pilot?')),
  mutant(2, 'asks to measure in a section', 'water', (d) => {
    d.section('drain-visit', 'call').text += ' Measure the gas pressure.'
  }),
  mutant(2, 'asks to bypass the float', 'water', (d) => d.say('off', 'Then bypass the float.')),
  mutant(2, 'an instruction class that is not on the list', 'water', (d) => {
    Object.assign(d.node('off'), { says: ['weld'] })
  }),

  mutant(3, 'the CO question goes past fire', 'water', (d) => d.lead('co', 'no', 'flood')),
  mutant(3, 'the gas answer goes straight to the check', 'weak-air', (d) => {
    d.lead('gas', 'no', 'off')
    d.unguard('off')
  }),
  mutant(3, 'the oil question depends on a fact', 'water', (d) => {
    const node = d.node('oil')
    node.when = { systems: ['several'] }
    node.answers?.push({ id: 'skip', as: 'button', text: '', to: 'tag' })
  }),
  mutant(3, 'a fact answers a hazard question', 'water', (d) => {
    d.node('oil').fact = 'heatSource'
  }),

  mutant(4, 'a used start is given again', 'weak-air', (d) => {
    d.lead('used', 'yes', 'ice')
    d.unguard('start')
  }),
  mutant(4, 'a start that does not count', 'weak-air', (d) => {
    delete d.node('start').turnsOn
  }),
  mutant(4, 'a second start after the first', 'weak-air', (d) => {
    d.flow.nodes.push({ ...structuredClone(d.node('start')), id: 'start-again' })
    d.unguard('start-again')
    d.lead('start-again', 'done', 'air-visit')
    d.lead('result', 'same', 'start-again')
  }),
  mutant(4, 'the air path after the start', 'weak-air', (d) => {
    d.flow.nodes.push({ ...structuredClone(d.node('space')), id: 'space-again' })
    d.unguard('space-again')
    for (const answer of d.node('space-again').answers ?? []) answer.to = 'air-visit'
    d.lead('result', 'same', 'space-again')
  }),

  mutant(5, 'a start is not remembered', 'weak-air', (d) => {
    delete d.answer('start', 'done').sets.resetUsed
  }),
  mutant(5, 'nobody asks whether it was spent', 'weak-air', (d) => {
    d.lead('co-alarm', 'works', 'ice')
    d.lead('co-alarm', 'skip', 'ice')
  }),
  mutant(5, '"not sure" counts as unused', 'weak-air', (d) => {
    d.lead('used', 'unsure', 'ice')
    for (const answer of d.answers('used', 'unsure')) answer.sets = { resetUsed: 'no' }
  }),

  mutant(6, 'a remembered second trip goes on', 'weak-air', (d) => {
    for (const answer of d.answers('used', 'skip'))
      if (answer.when?.tripped?.includes('yes')) Object.assign(answer, { to: 'ice', sets: { resetUsed: 'no' } })
    d.unguard('start')
  }),
  mutant(6, '"it tripped again" goes on to the checks', 'weak-air', (d) => d.lead('used', 'again', 'ice')),
  mutant(6, 'a second trip can wait', 'weak-air', (d) => {
    d.lead('result', 'trips', 'air-visit')
    delete d.answer('result', 'trips').sets.least
  }),

  mutant(7, '"not sure" about CO goes on', 'water', (d) => {
    d.lead('co', 'unsure', 'fire')
    d.answer('co', 'unsure').sets = { coDenied: 'yes' }
  }),
  mutant(7, '"not sure" about a bang is milder', 'alarm', (d) => {
    d.lead('boom', 'unsure', 'alarm-chirp')
    delete d.answer('boom', 'unsure').sets.least
  }),
  mutant(7, 'no answer "not sure"', 'alarm', (d) => {
    d.node('fire').answers = d.node('fire').answers?.filter((answer) => answer.id !== 'unsure')
  }),
  mutant(7, '"not sure" about flood leads to a check', 'water', (d) => d.lead('flood', 'unsure', 'where')),

  mutant(8, 'fire ends urgent, so that gas after it says more', 'alarm', (d) => {
    d.lead('fire', 'yes', 'stop-boom')
    d.lead('fire', 'unsure', 'stop-boom')
  }),
  mutant(8, 'the CO question is left out', 'alarm', (d) => d.lead('presence', 'yes', 'fire')),
  mutant(8, 'an emergency is marked urgent', 'alarm', (d) => {
    d.node('emergency-steam').severity = 2
  }),
  mutant(8, 'water is asked before flood', 'alarm', (d) => {
    d.lead('fire', 'no', 'water')
    d.lead('water', 'no', 'flood')
    d.lead('shock', 'no', 'wet-before')
  }),

  mutant(9, 'gas: call from here', 'alarm', (d) => {
    d.claim('emergency-gas', 'phone-here')
  }),
  mutant(9, 'gas: call, in words only', 'alarm', (d) => d.say('emergency-gas', 'Call the gas company.')),
  mutant(9, 'fire: open the windows', 'alarm', (d) => {
    d.sections('emergency-fire').push({ slot: 'meanwhile', text: 'Open the windows.', says: ['windows'] })
  }),
  mutant(9, 'a bang: look at the filter', 'alarm', (d) => {
    d.claim('stop-boom', 'filter')
  }),
  mutant(9, 'something changed: one warm room', 'alarm', (d) => {
    d.claim('hazards-now', 'warm-room')
  }),

  mutant(10, 'gas "yes" is a button', 'alarm', (d) => {
    d.answer('gas', 'yes').as = 'button'
  }),
  mutant(10, 'gas "not sure" is a button', 'weak-air', (d) => {
    d.answer('again-gas', 'unsure').as = 'button'
  }),
  mutant(10, 'a flow begins with something else', 'alarm', (d) => {
    d.flow.start = 'co'
  }),

  mutant(11, '"something changed" leads to a mild end', 'alarm', (d) => {
    d.flow.changed = 'alarm-chirp'
  }),
  mutant(11, '"something changed" is urgent only', 'alarm', (d) => {
    d.node('hazards-now').severity = 2
  }),
  mutant(11, '"something changed" is silent about CO', 'alarm', (d) => {
    d.node('hazards-now').text = d.node('hazards-now').text.replace('a CO alarm, ', '')
  }),

  mutant(12, 'an emergency goes on', 'alarm', (d) => {
    d.node('emergency-gas').answers = [{ id: 'go', as: 'button', text: 'Go on', to: 'alarm-chirp' }]
  }),
  mutant(12, 'an emergency asks to sign in', 'alarm', (d) => d.say('emergency-co', 'Sign in to save this.')),
  mutant(12, 'an emergency sends elsewhere', 'alarm', (d) => {
    d.section('emergency-fire', 'call').text += ' See https://example.org.'
  }),

  mutant(13, 'no word on what to say', 'alarm', (d) => {
    d.drop('emergency-gas', (section) => section.slot === 'say')
  }),
  mutant(13, 'nothing for a tenant', 'alarm', (d) => {
    d.drop('alarm-chirp', (section) => section.when?.tenure?.[0] === 'rent')
  }),
  mutant(13, 'the warning signs only for owners', 'alarm', (d) => {
    d.section('alarm-chirp', 'watch').when = { tenure: ['own'] }
  }),

  mutant(14, 'a filter for every kind of system', 'weak-air', (d) => d.unguard('filter')),
  mutant(14, 'grilles where nobody knows of ducts', 'weak-air', (d) => {
    d.node('grilles').when = { delivery: ['ducted', 'unknown'] }
  }),
  mutant(14, 'emergency heat without a heat pump', 'outdoor-ice', (d) => {
    delete (d.node('start-backup').when as Record<string, unknown>).heatSource
  }),
  mutant(14, 'the oil button for a tenant', 'power-cut', (d) => {
    for (const id of ['oil-look', 'start-oil']) delete (d.node(id).when as Record<string, unknown>).tenure
  }),

  mutant(15, 'a vulnerable person is told that all is well', 'outdoor-ice', (d) => {
    for (const answer of d.answers('pattern', 'steam'))
      Object.assign(answer, { to: 'defrost-normal', sets: { least: '0' } })
  }),
  mutant(15, 'the profile says vulnerable, and cold does not count', 'outdoor-ice', (d) => {
    d.answer('vulnerable', 'skip').sets = { coldRisk: 'no' }
  }),
  mutant(15, 'less than 60 °F does not count', 'outdoor-ice', (d) => {
    d.answer('indoor', 'cold').sets = {}
  }),
  mutant(15, 'the room temperature is not asked', 'outdoor-ice', (d) => {
    for (const id of ['yes', 'no', 'unsure', 'skip']) d.lead('vulnerable', id, 'used')
  }),

  mutant(16, 'a price', 'alarm', (d) => d.say('alarm-chirp', 'A new one costs $30.')),
  mutant(16, 'a part as the fix', 'weak-air', (d) => d.say('air-visit', 'You should replace the igniter.')),
  mutant(16, 'one family only', 'weak-air', (d) => {
    d.node('air-visit').text = 'The air is weak. It may be the fan.'
  }),

  mutant(17, 'no word on when to stop', 'weak-air', (d) => {
    d.node('off').text = d.node('off').text.replace(/\nStop if: .*\n/, '\n')
  }),
  mutant(17, 'a precondition without words', 'weak-air', (d) => {
    d.node('off').text = d.node('off').text.replace(/^Only if: .*\n/, 'Only if: \n')
  }),
  mutant(17, 'the filter while it runs', 'weak-air', (d) => d.lead('ice', 'no', 'filter')),
  mutant(17, 'seven actions on one path', 'weak-air', (d) => {
    let last = 'grilles'
    for (const name of ['more-1', 'more-2', 'more-3', 'more-4']) {
      d.flow.nodes.push({ ...structuredClone(d.node('space')), id: name })
      d.unguard(name)
      for (const id of ['done', 'cannot']) d.lead(last, id, name)
      last = name
    }
    for (const id of ['done', 'cannot']) d.lead(last, id, 'start')
  }),

  mutant(18, 'a wait of three minutes', 'weak-air', (d) => {
    d.node('wait').minutes = 3
  }),
  mutant(18, 'no wait after the start', 'weak-air', (d) => d.lead('start', 'done', 'again-gas')),
  mutant(18, 'the result right after the start', 'weak-air', (d) => d.lead('start', 'done', 'result')),

  mutant(19, 'a long sentence', 'alarm', (d) => d.say('alarm-chirp', `It is ${'very '.repeat(20)}loud.`)),
  mutant(19, 'hard words', 'alarm', (d) => {
    d.node('emergency-co').text =
      'DANGER. Immediately evacuate every individual; professional remediation necessitates authorization.'
  }),
  mutant(19, 'no signal word', 'alarm', (d) => {
    d.node('emergency-gas').text = d.node('emergency-gas').text.replace('DANGER. ', '')
  }),
  mutant(19, 'DANGER on a small thing', 'alarm', (d) => {
    d.node('alarm-chirp').text = `DANGER. ${d.node('alarm-chirp').text}`
  }),

  mutant(20, 'no source', 'alarm', (d) => {
    d.node('co').sources = []
  }),
  mutant(20, 'a source that is not in the list', 'alarm', (d) => {
    d.node('co').sources = ['hearsay']
  }),
  mutant(20, 'no day of review', 'alarm', (d) => {
    d.node('co').reviewed = 'soon'
  }),
  mutant(20, 'a node that nothing leads to', 'alarm', (d) => d.lead('sound', 'chirp', 'emergency-co')),

  mutant(21, 'the result without asking again', 'weak-air', (d) => d.lead('wait', 'waited', 'result')),
  mutant(21, 'the bang is not asked again', 'weak-air', (d) => d.lead('again-fire', 'no', 'result')),
  mutant(21, 'a start right after a rest', 'power-cut', (d) => d.lead('rest', 'waited', 'off')),

  mutant(22, 'a remembered hazard does not close the checks', 'water', (d) => {
    for (const answer of d.answers('tag', 'skip')) answer.to = 'which-system'
  }),
  mutant(22, 'a bang, and on', 'water', (d) => d.lead('boom', 'yes', 'oil')),
  mutant(22, '"not sure" about CO, and on', 'alarm', (d) => d.lead('co', 'unsure', 'fire')),
  mutant(22, 'a hot box, and on', 'no-cooling', (d) => d.lead('breaker', 'bad', 'switch')),

  mutant(23, 'from far away to the checks', 'water', (d) => d.lead('presence', 'no', 'co')),
  mutant(23, 'a start without a CO alarm', 'weak-air', (d) => d.lead('co-alarm', 'none', 'used')),
  mutant(23, 'gas taken as burning no fuel', 'weak-air', (d) => {
    for (const answer of d.answers('burns-fuel', 'skip')) answer.sets = { burnsFuel: 'no' }
  }),

  mutant(24, 'nobody asks which system', 'water', (d) => {
    for (const id of ['no']) d.lead('tag', id, 'season')
  }),
  mutant(24, 'the question is skipped with several', 'water', (d) => {
    d.node('which-system').when = { systems: ['one'] }
  }),
  mutant(24, 'a known heat source spares the question', 'weak-air', (d) => d.lead('tag', 'no', 'heat-source')),
]
