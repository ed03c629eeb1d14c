export interface Visitable {
  earliest: number
  due: number
  latest: number
}

export interface Visit<T> {
  day: number
  items: T[]
}

/** Model.md, section 7, read as it stands. What is past its `latest` is done today. */
export function visitsOf<T extends Visitable>(items: T[], on: number): Visit<T>[] {
  let left = items.map((item) => ({
    item,
    from: item.latest < on ? on : Math.max(on, item.earliest),
    to: Math.max(on, item.latest),
  }))
  const visits: Visit<T>[] = []
  while (left.length) {
    const day = Math.min(...left.map(({ to }) => to))
    const here = left.filter(({ from, to }) => from <= day && day <= to)
    left = left.filter((one) => !here.includes(one))
    const from = Math.max(...here.map((one) => one.from))
    const to = Math.min(...here.map((one) => one.to))
    let best = from
    let least = Number.POSITIVE_INFINITY
    for (let d = from; d <= to; d++) {
      const distance = here.reduce((sum, { item }) => sum + Math.abs(item.due - d), 0)
      if (distance < least) {
        least = distance
        best = d
      }
    }
    visits.push({ day: best, items: here.map(({ item }) => item) })
  }
  return visits
}
