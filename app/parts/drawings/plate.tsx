import { type ReactNode, useId } from 'react'

/** Every drawing is this many units wide; at 280 CSS pixels its 17-unit words are still 14.9 px. */
export const PLATE_WIDTH = 320
const WORD_SIZE = 17

export type Point = readonly [x: number, y: number]

/**
 * The frame of one line drawing: strokes in the text's own colour, so that dark pages and print need no second
 * version. `title` names it, `desc` says what can be seen for those who cannot see it.
 */
export function Plate(props: { title: string; desc: string; height?: number; children: ReactNode }) {
  const { title, desc, height = 220, children } = props
  const id = useId()
  return (
    <svg
      className="drawing"
      viewBox={`0 0 ${PLATE_WIDTH} ${height}`}
      width={PLATE_WIDTH}
      height={height}
      role="img"
      aria-labelledby={`${id}title`}
      aria-describedby={`${id}desc`}
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
      strokeLinecap="round"
      strokeLinejoin="round"
    >
      <title id={`${id}title`}>{title}</title>
      <desc id={`${id}desc`}>{desc}</desc>
      {children}
    </svg>
  )
}

export function Word(props: { at: Point; anchor?: 'start' | 'middle' | 'end'; strong?: boolean; children: string }) {
  const { at, anchor = 'middle', strong = false, children } = props
  return (
    <text
      x={at[0]}
      y={at[1]}
      textAnchor={anchor}
      fontSize={WORD_SIZE}
      fontWeight={strong ? 700 : 400}
      fill="currentColor"
      stroke="none"
    >
      {children}
    </text>
  )
}

/** Moving air: a light line with an open head. */
export function Air({ from, to }: { from: Point; to: Point }) {
  const head = headOf(from, to, 9)
  return (
    <g strokeWidth="2">
      <path d={`M${from.join()} L${to.join()}`} strokeDasharray="7 6" />
      <path d={`M${head.left.join()} L${to.join()} L${head.right.join()}`} />
    </g>
  )
}

/** The arrow printed on a filter: solid and heavy, so that it is not taken for moving air. */
export function PrintedArrow({ from, to }: { from: Point; to: Point }) {
  const head = headOf(from, to, 20)
  const neck: Point = [(head.left[0] + head.right[0]) / 2, (head.left[1] + head.right[1]) / 2]
  return (
    <g>
      <path d={`M${from.join()} L${neck.join()}`} strokeWidth="8" strokeLinecap="butt" />
      <path d={`M${head.left.join()} L${to.join()} L${head.right.join()} Z`} fill="currentColor" strokeWidth="1" />
    </g>
  )
}

/** Slanted lines that say "cut through here": a wall, a ceiling, a floor. */
export function Cut(props: { x: number; y: number; width: number; height: number }) {
  const { x, y, width, height } = props
  const lines: string[] = []
  for (let offset = -height; offset < width; offset += 10) {
    const [x1, x2] = [Math.max(0, offset), Math.min(width, offset + height)]
    if (x2 > x1) lines.push(`M${x + x1},${y + height - (x1 - offset)} L${x + x2},${y + height - (x2 - offset)}`)
  }
  return (
    <g>
      <path d={lines.join(' ')} strokeWidth="1" strokeOpacity="0.6" />
      <rect x={x} y={y} width={width} height={height} />
    </g>
  )
}

/** Pleats seen on the edge of a filter, along its longer side. */
export function Pleats(props: { x: number; y: number; width: number; height: number }) {
  const { x, y, width, height } = props
  const isTall = height > width
  const steps = Math.round((isTall ? height : width) / 8)
  const points = Array.from({ length: steps + 1 }, (_, step) => {
    const along = step / steps
    const across = step % 2 === 0 ? 0.1 : 0.9
    return isTall ? `${x + across * width},${y + along * height}` : `${x + along * width},${y + across * height}`
  })
  return (
    <g>
      <polyline points={points.join(' ')} strokeWidth="1.2" strokeOpacity="0.7" />
      <rect x={x} y={y} width={width} height={height} strokeWidth="3" />
    </g>
  )
}

/** A standing person: enough to show size and which way is up. */
export function Person({ at, height, arm }: { at: Point; height: number; arm?: Point }) {
  const [x, feet] = at
  const head = height * 0.09
  const shoulder = feet - height * 0.78
  const hip = feet - height * 0.45
  const hand = arm ?? [x + height * 0.14, hip]
  return (
    <g strokeWidth="3">
      <circle cx={x} cy={feet - height + head} r={head} />
      <path d={`M${x},${feet - height + 2 * head} V${hip} M${x},${hip} L${x - height * 0.1},${feet} M${x},${hip}`} />
      <path d={`M${x},${hip} L${x + height * 0.1},${feet} M${x},${shoulder} L${hand.join()}`} />
      <path d={`M${x},${shoulder} L${x - height * 0.14},${hip}`} />
    </g>
  )
}

function headOf(from: Point, to: Point, size: number): { left: Point; right: Point } {
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0])
  const wing = (turn: number): Point => [
    Math.round((to[0] - size * Math.cos(angle + turn)) * 10) / 10,
    Math.round((to[1] - size * Math.sin(angle + turn)) * 10) / 10,
  ]
  return { left: wing(0.55), right: wing(-0.55) }
}
