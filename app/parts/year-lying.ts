import { scaleLinear } from 'd3-scale'
import { LINE, packRows, spread, textWidth, wrapText } from './label-layout'
import {
  type Bar,
  hoursArea,
  ICON,
  type Line,
  round,
  sides,
  type Text,
  textAt,
  topHours,
  type YearDrawing,
} from './year-layout'
import { type Lane, YEAR_DAYS, type YearMarks } from './year-marks'

// At its least shown width, 880 px, the 15-unit text is 15 px.
const WIDTH = 880
const GUTTER = 132
const RIGHT = WIDTH - 8
const AREA_TOP = 26
const AREA_HEIGHT = 168
const BAR = 12
const GAP = 8

/** The year lying down, for a desk and for paper: months to the right, heat up, cold down, filters and windows below. */
export function layLying(marks: YearMarks, todayWords: string): YearDrawing {
  const scale = scaleLinear([0, YEAR_DAYS], [GUTTER, RIGHT])
  const along = (day: number) => round(scale(day))
  const { heatRoom, hour } = sides(marks, AREA_HEIGHT)
  const axis = round(AREA_TOP + heatRoom)
  const texts: Text[] = []
  if (marks.heatTop > 0) texts.push(textAt(0, axis - 2 * LINE - 4, ['Heating', topHours(marks.heatTop)]))
  if (marks.coolTop > 0) texts.push(textAt(0, axis + 4, ['Cooling', topHours(marks.coolTop)]))
  const monthsTop = AREA_TOP + AREA_HEIGHT + 4
  for (const { at, name, year } of marks.months) {
    const text = textAt(along(at) + 5, monthsTop, year === null ? [name] : [name, String(year)], { tone: 'soft' })
    if (text.box.x + text.box.width <= WIDTH) texts.push(text)
  }
  const drawing: YearDrawing = {
    width: WIDTH,
    height: monthsTop + 2 * LINE + GAP,
    heat: hoursArea({ weeks: marks.weeks, value: ({ heat }) => heat, along, axis, hour: -hour, lies: true }),
    cool: hoursArea({ weeks: marks.weeks, value: ({ cool }) => cool, along, axis, hour, lies: true }),
    axis: { x1: GUTTER, y1: axis, x2: RIGHT, y2: axis },
    months: marks.months.map(({ at }) => ({ x1: along(at), y1: AREA_TOP, x2: along(at), y2: monthsTop + LINE })),
    today: null,
    texts,
    icons: [],
    tracks: [],
    loads: [],
    bars: [],
    leaders: [],
  }
  for (const lane of marks.lanes) addLane(drawing, lane, along)
  if (marks.bars.length > 0) addBars(drawing, marks.bars, along)
  if (marks.today !== null) {
    const x = along(marks.today)
    const width = textWidth(todayWords, 17)
    const middle = Math.max(width / 2, Math.min(x, WIDTH - width / 2))
    drawing.texts.push(textAt(middle, 0, [todayWords], { anchor: 'middle', tone: 'strong' }))
    drawing.today = { x1: x, y1: LINE + 4, x2: x, y2: drawing.height }
  }
  drawing.height = Math.ceil(drawing.height + 2)
  return drawing
}

function addLane(drawing: YearDrawing, lane: Lane, along: (day: number) => number): void {
  const top = drawing.height
  const middle = top + ICON.height / 2 + 2
  const name = wrapText(lane.letter ? `${lane.letter}: ${lane.name}` : `Filter: ${lane.name}`, GUTTER - 14)
  drawing.texts.push(textAt(0, top, name))
  drawing.tracks.push({ x1: GUTTER, y1: middle + ICON.height / 2, x2: RIGHT, y2: middle + ICON.height / 2 })
  if (lane.load) {
    const { from, to, share } = lane.load
    const foot = middle + ICON.height / 2
    drawing.loads.push(`${along(from)},${foot} ${along(to)},${foot} ${along(to)},${round(foot - ICON.height * share)}`)
  }
  for (const { at, kind } of lane.events) drawing.icons.push({ x: along(at), y: middle, kind })
  const labelsTop = middle + ICON.height / 2 + 5
  const rows = labelRows(lane, along)
  rows.forEach((row, index) => {
    const y = labelsTop + index * LINE
    for (const { date, at, start, width } of row) {
      drawing.texts.push(textAt(start + width / 2, y, [date], { anchor: 'middle' }))
      const isMoved = Math.abs(start + width / 2 - along(at)) > 6 || index > 0
      if (isMoved)
        drawing.leaders.push({ x1: along(at), y1: middle + ICON.height / 2, x2: round(start + width / 2), y2: y + 3 })
    }
  })
  drawing.height = Math.max(top + name.length * LINE, labelsTop + rows.length * LINE) + GAP
}

/** The dates of a lane's events in as few rows as hold them side by side, neighbours in turn. */
function labelRows(lane: Lane, along: (day: number) => number) {
  const dates = new Map(lane.events.map(({ at, date }) => [at, date]))
  const labels = [...dates].map(([at, date]) => ({ at, date, size: textWidth(date) + 6 }))
  const room = RIGHT + 8 - GUTTER
  let count = 1
  const rowsOf = (rows: number) =>
    Array.from({ length: rows }, (_, row) => labels.filter((_, index) => index % rows === row))
  while (rowsOf(count).some((row) => row.reduce((sum, { size }) => sum + size, 0) > room)) count++
  return rowsOf(count).map((row) => {
    const starts = spread(
      row.map(({ at, size }) => ({ middle: along(at), size })),
      GUTTER,
      GUTTER + room,
    )
    return row.map(({ at, date, size }, index) => ({ at, date, start: (starts[index] ?? GUTTER) + 3, width: size - 6 }))
  })
}

function addBars(drawing: YearDrawing, bars: YearMarks['bars'], along: (day: number) => number): void {
  const top = drawing.height
  const name = wrapText('Time for a service', GUTTER - 14)
  drawing.texts.push(textAt(0, top, name))
  const laid = bars.map((bar) => layBar(bar, along))
  const rows = packRows(
    laid.map(({ from, to }) => ({ from, to })),
    10,
  )
  const count = Math.max(...rows) + 1
  const heights = Array.from({ length: count }, (_, row) =>
    Math.max(...laid.filter((_, index) => rows[index] === row).map(({ below }) => (below ? BAR + LINE + 6 : LINE + 4))),
  )
  const tops = heights.map((_, row) => top + heights.slice(0, row).reduce((sum, height) => sum + height, 0))
  laid.forEach(({ bar, label, below, x }, index) => {
    const y = tops[rows[index] ?? 0] ?? top
    const barTop = below ? y : y + (LINE - BAR) / 2
    const tick: Line = { x1: along(bar.due), y1: barTop - 3, x2: along(bar.due), y2: barTop + BAR + 3 }
    const box: Bar = { x: along(bar.from), y: barTop, width: along(bar.to) - along(bar.from), height: BAR, due: tick }
    drawing.bars.push(box)
    drawing.texts.push(textAt(x, below ? y + BAR + 3 : y, [label]))
  })
  drawing.height = Math.max(top + name.length * LINE, top + heights.reduce((sum, height) => sum + height, 0))
}

/** A window and its words: after it, else before it, else under it. */
function layBar(bar: YearMarks['bars'][number], along: (day: number) => number) {
  const label = `${bar.name}, ${bar.dates}`
  const width = textWidth(label)
  const [start, end] = [along(bar.from), along(bar.to)]
  if (end + 8 + width <= WIDTH) return { bar, label, below: false, x: end + 8, from: start, to: end + 8 + width }
  if (start - 8 - width >= GUTTER)
    return { bar, label, below: false, x: start - 8 - width, from: start - 8 - width, to: end }
  const x = Math.max(GUTTER, Math.min(start, WIDTH - width))
  return { bar, label, below: true, x, from: Math.min(x, start), to: Math.max(x + width, end) }
}
