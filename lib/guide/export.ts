import type { Flow } from './types'

export const DEFAULT_EMERGENCY_NUMBER = '911'

/** The household's number in place of `{emergency}`. */
export function fillEmergency(text: string, number: string = DEFAULT_EMERGENCY_NUMBER): string {
  return text.replaceAll('{emergency}', number)
}

/** A flow with the number in all its texts: what a page draws and what is exported. */
export function fillFlow(flow: Flow, number: string = DEFAULT_EMERGENCY_NUMBER): Flow {
  return {
    ...flow,
    nodes: flow.nodes.map((node) => ({
      ...node,
      text: fillEmergency(node.text, number),
      ...(node.answers && {
        answers: node.answers.map((answer) => ({ ...answer, text: fillEmergency(answer.text, number) })),
      }),
      ...(node.sections && {
        sections: node.sections.map((section) => ({ ...section, text: fillEmergency(section.text, number) })),
      }),
    })),
  }
}

/** The graph as other programs read it. */
export function exportFlows(flows: readonly Flow[]): { flows: Flow[] } {
  return { flows: flows.map((flow) => fillFlow(flow)) }
}
