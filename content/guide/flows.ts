import type { Flow, GuideNode } from '@/lib/guide/types'
import { assemble } from './build'
import { FACTS } from './facts'
import { BURSTS, NO_HEAT, OUTDOOR_ICE, POWER_CUT, THERMOSTAT_BLANK } from './heat-flows'
import { ALARM, NO_COOLING, NOISE, WATER, WEAK_AIR } from './other-flows'
import { OUTCOMES } from './outcomes'

const TITLES: [id: string, title: string, nodes: GuideNode[]][] = [
  ['no-heat', 'No heat', NO_HEAT],
  ['short-heat', 'Heat in short bursts, or it lights and goes out', BURSTS],
  ['no-cooling', 'No cooling', NO_COOLING],
  ['weak-air', 'Weak or uneven air', WEAK_AIR],
  ['water', 'Water near the equipment', WATER],
  ['noise', 'Noise at the start', NOISE],
  ['outdoor-ice', 'Ice or steam at the outdoor unit', OUTDOOR_ICE],
  ['thermostat-blank', 'The thermostat is blank', THERMOSTAT_BLANK],
  ['power-cut', 'After a power cut or a flood', POWER_CUT],
  ['alarm', 'A CO or smoke alarm sounds or chirps', ALARM],
]

/** The ten flows, in the order in which the guide offers them. */
export const FLOWS: Flow[] = TITLES.map(([id, title, nodes]) =>
  assemble({ id, title, facts: FACTS, nodes: [...nodes, ...OUTCOMES] }),
)

/** Undefined where no flow has this id, as one of an address may not. */
export function findFlow(id: string | undefined): Flow | undefined {
  return FLOWS.find((flow) => flow.id === id)
}

/** Throws on an id that no flow has. */
export function getFlow(id: string): Flow {
  const flow = findFlow(id)
  if (flow === undefined) throw new Error(`no flow ${id}`)
  return flow
}
