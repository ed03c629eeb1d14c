/** Laying out labels so that none covers another. Lengths in user units of the drawing. */

export const FONT = 15
export const LINE = 18

// Widths of the text face's signs in hundredths of an em, measured in a browser (figures tabular) and rounded
// up; others count as wide.
const WIDTHS: [signs: string, hundredths: number][] = [
  ['ijl .,:;()|’', 30],
  ['frtI-“”', 40],
  ['cksvxyz', 50],
  ['aehnouJL–×', 55],
  ['bdgpqEFPSTVY', 60],
  ['ABCKRXZ0123456789', 65],
  ['wDGHNUOQ', 75],
]
const WIDE = 95
const widthOf = new Map(WIDTHS.flatMap(([signs, hundredths]) => [...signs].map((sign) => [sign, hundredths] as const)))

/** The width of a line of text, a little more than it takes: `textWidth('28 Nov')` is 52. */
export function textWidth(text: string, size = FONT): number {
  let hundredths = 0
  for (const sign of text) hundredths += widthOf.get(sign) ?? WIDE
  return Math.ceil((hundredths * size) / 100) + 1
}

/** Words in lines no wider than `width`; a word wider than that keeps a line of its own. */
export function wrapText(text: string, width: number): string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines.at(-1)
    const longer = last === undefined ? word : `${last} ${word}`
    if (last !== undefined && textWidth(longer) <= width) lines[lines.length - 1] = longer
    else lines.push(word)
  }
  return lines
}

/** One label on a line: where its middle would like to be, and how much room it takes. */
export interface Wish {
  middle: number
  size: number
}

interface Cluster {
  first: number
  /** Sum of the starts that its members would like, each less the room taken before it. */
  wanted: number
  count: number
  size: number
  start: number
}

/**
 * Starts for labels on a line from `min` to `max`, in the order given, that touch nowhere and lie as near their
 * wishes as that allows (least squares: neighbours that clash are joined and set about their mean). Wishes come sorted
 * by middle. Throws where the sizes together don't fit.
 */
export function spread(wishes: Wish[], min: number, max: number): number[] {
  const total = wishes.reduce((sum, { size }) => sum + size, 0)
  if (total > max - min + 1e-6) throw new RangeError(`labels of ${total} don't fit in ${max - min}`)
  const clusters: Cluster[] = []
  wishes.forEach(({ middle, size }, index) => {
    let cluster: Cluster = { first: index, wanted: middle - size / 2, count: 1, size, start: 0 }
    cluster.start = settle(cluster, min, max)
    let before = clusters.at(-1)
    while (before && before.start + before.size > cluster.start) {
      clusters.pop()
      cluster = {
        first: before.first,
        wanted: before.wanted + cluster.wanted - cluster.count * before.size,
        count: before.count + cluster.count,
        size: before.size + cluster.size,
        start: 0,
      }
      cluster.start = settle(cluster, min, max)
      before = clusters.at(-1)
    }
    clusters.push(cluster)
  })
  const starts: number[] = []
  for (const { first, count, start } of clusters) {
    let at = start
    for (const { size } of wishes.slice(first, first + count)) {
      starts.push(at)
      at += size
    }
  }
  return starts
}

function settle({ wanted, count, size }: Cluster, min: number, max: number): number {
  return Math.max(min, Math.min(wanted / count, max - size))
}

/** For each stretch the first row in which it meets no earlier one; `gap` is kept between neighbours. */
export function packRows(stretches: { from: number; to: number }[], gap: number): number[] {
  const rows: { from: number; to: number }[][] = []
  return stretches.map((stretch) => {
    const free = rows.findIndex((row) =>
      row.every(({ from, to }) => stretch.from >= to + gap || stretch.to + gap <= from),
    )
    const row = free < 0 ? rows.length : free
    rows[row] = [...(rows[row] ?? []), stretch]
    return row
  })
}
