type Step = string | number | null

/** A map whose key is a path of plain values: looking up makes no text, which is what a portfolio would spend its time on. */
export class PathMap<T> {
  private readonly root = new Map<Step, unknown>()

  /** The value at a path; made and kept where there is none. Every path must have the same length. */
  get(path: readonly Step[], make: () => T): T {
    let level = this.root
    const last = path.length - 1
    for (let i = 0; i < last; i++) {
      const step = path[i] as Step
      let next = level.get(step) as Map<Step, unknown> | undefined
      if (next === undefined) {
        next = new Map()
        level.set(step, next)
      }
      level = next
    }
    const step = path[last] as Step
    let value = level.get(step) as T | undefined
    if (value === undefined) {
      value = make()
      level.set(step, value)
    }
    return value
  }
}
