/** A broken invariant of the safety basis, by its number; DEVELOPERS.md lists them. */
export interface Violation {
  flow: string
  invariant: number
  node: string
  because: string
  /** How the node is reached, or empty where the fault is in the node itself. */
  path: string
}

/** `no-heat · invariant 3 · filter: … [gas: no → …]` */
export function violationText({ flow, invariant, node, because, path }: Violation): string {
  return `${flow} · invariant ${invariant} · ${node}: ${because}${path === '' ? '' : `\n    ${path}`}`
}
