import { area, curveMonotoneX, curveMonotoneY } from 'd3-shape'
import { FONT, LINE, textWidth } from './label-layout'
import type { YearMarks } from './year-marks'

/** A finished drawing, in user units from its top left: the parts only write it down. */
export interface YearDrawing {
  width: number
  height: number
  heat: string
  cool: string
  axis: Line
  months: Line[]
  today: Line | null
  texts: Text[]
  icons: Icon[]
  tracks: Line[]
  loads: string[]
  bars: Bar[]
  leaders: Line[]
}

export interface Line {
  x1: number
  y1: number
  x2: number
  y2: number
}

export interface Box {
  x: number
  y: number
  width: number
  height: number
}

/** A service window; `due` is where its last good day is ticked, along its length. */
export interface Bar extends Box {
  due: Line
}

/** Around its middle. */
export interface Icon {
  x: number
  y: number
  kind: 'changed' | 'looked' | 'forecast'
}

export interface Text {
  lines: string[]
  x: number
  /** Baseline of the first line. */
  y: number
  anchor: 'start' | 'middle' | 'end'
  tone: 'plain' | 'soft' | 'strong'
  box: Box
}

export const ICON = { width: 16, height: 20 }

const ASCENT = 14

/** A text whose box begins at `top`; `x` is its start, middle or end, as `anchor` says. */
export function textAt(
  x: number,
  top: number,
  lines: string[],
  more: Partial<Pick<Text, 'anchor' | 'tone'>> = {},
): Text {
  const { anchor = 'start', tone = 'plain' } = more
  const width = Math.max(...lines.map((line) => textWidth(line, tone === 'strong' ? FONT * 1.08 : FONT)))
  const left = anchor === 'start' ? x : anchor === 'middle' ? x - width / 2 : x - width
  return { lines, x, y: top + ASCENT, anchor, tone, box: { x: left, y: top, width, height: lines.length * LINE } }
}

/** `up to 7 h a day`, in whole hours. */
export function topHours(hours: number): string {
  const whole = Math.round(hours)
  return whole === 0 ? 'under 1 h a day' : `up to ${whole} h a day`
}

/** How much of the room each side of the axis gets, and the length of one hour: one scale for heat and cold. */
export function sides({ heatTop, coolTop }: YearMarks, room: number): { heatRoom: number; hour: number } {
  // A year of a few minutes shouldn't look like a winter: the scale never spreads fewer than 3 hours over the room.
  const total = Math.max(heatTop + coolTop, 3)
  const share = Math.max(0.35, Math.min(0.65, heatTop + coolTop === 0 ? 0.5 : heatTop / (heatTop + coolTop)))
  const heatRoom = room * share
  const hour = Math.min(
    room / total,
    heatTop > 0 ? heatRoom / heatTop : Infinity,
    coolTop > 0 ? (room - heatRoom) / coolTop : Infinity,
  )
  return { heatRoom, hour }
}

interface AreaShape {
  weeks: YearMarks['weeks']
  value: (week: YearMarks['weeks'][number]) => number
  along: (day: number) => number
  axis: number
  /** Length of one hour, negative towards the smaller coordinate. */
  hour: number
  lies: boolean
}

/** The outline of heating or cooling hours against the axis, as path data. Empty where there are none. */
export function hoursArea({ weeks, value, along, axis, hour, lies }: AreaShape): string {
  if (weeks.every((week) => value(week) === 0)) return ''
  const shape = area<YearMarks['weeks'][number]>()
  const out = (week: YearMarks['weeks'][number]) => round(axis + hour * value(week))
  const line = lies
    ? shape
        .x((week) => round(along(week.at)))
        .y0(axis)
        .y1(out)
        .curve(curveMonotoneX)
    : shape
        .y((week) => round(along(week.at)))
        .x0(axis)
        .x1(out)
        .curve(curveMonotoneY)
  return (line(weeks) ?? '').replace(/\d+\.\d+/g, (number) => String(round(Number(number))))
}

export function round(value: number): number {
  return Math.round(value * 10) / 10
}
