import { scaleLinear } from 'd3-scale'
import { LINE, packRows, spread, textWidth, wrapText } from './label-layout'
import { hoursArea, ICON, round, sides, textAt, topHours, type YearDrawing } from './year-layout'
import { YEAR_DAYS, type YearMarks } from './year-marks'

// On a phone 360 px wide the drawing has 324 px: its 15-unit text is 14.5 px there.
const WIDTH = 336
const AREA_LEFT = 40
const AREA_WIDTH = 92
const LANES_LEFT = AREA_LEFT + AREA_WIDTH + 18
const LABELS_MAX_X = WIDTH - 108
const DAY = 2.6
const BAR = 10
const NOTE_GAP = 6

interface Note {
  /** The day it would like to stand at, and where its mark ends. */
  at: number
  fromX: number
  lines: string[]
  isToday: boolean
}

/** The year running down, for a phone: months downwards, heat to the left, cold to the right, then filters, windows, words. */
export function layRunning(marks: YearMarks, todayWords: string): YearDrawing {
  const barRows = packRows(
    marks.bars.map(({ from, to }) => ({ from, to })),
    2,
  )
  const barLanes = Math.max(-1, ...barRows) + 1
  const wish = marks.lanes.length * 24 + barLanes * 16
  const squeeze = wish === 0 ? 1 : Math.min(1, (LABELS_MAX_X - 14 - LANES_LEFT) / wish)
  const laneX = (lane: number) => round(LANES_LEFT + (lane * 24 + 12) * squeeze)
  const barX = (lane: number) => round(LANES_LEFT + (marks.lanes.length * 24 + lane * 16 + 8) * squeeze)
  const labelsX = Math.ceil(LANES_LEFT + wish * squeeze + 14)

  // Where the lanes stand too close for their letters side by side, every second letter goes a line lower.
  const letterRows = marks.lanes.length < 2 ? 0 : 24 * squeeze > textWidth('W') ? 1 : 2
  const head = (2 + letterRows) * LINE + 8
  const notes = noteList(marks, todayWords, { laneX, barX, barRows, width: WIDTH - labelsX })
  const sizes = notes.map(({ lines }) => lines.length * LINE + NOTE_GAP)
  const length = Math.ceil(
    Math.max(
      YEAR_DAYS * DAY,
      sizes.reduce((sum, size) => sum + size, 0),
    ),
  )
  const scale = scaleLinear([0, YEAR_DAYS], [head, head + length])
  const along = (day: number) => round(scale(day))
  const { heatRoom, hour } = sides(marks, AREA_WIDTH)
  const axis = round(AREA_LEFT + heatRoom)

  const drawing: YearDrawing = {
    width: WIDTH,
    height: head + length + 2,
    heat: hoursArea({ weeks: marks.weeks, value: ({ heat }) => heat, along, axis, hour: -hour, lies: false }),
    cool: hoursArea({ weeks: marks.weeks, value: ({ cool }) => cool, along, axis, hour, lies: false }),
    axis: { x1: axis, y1: head, x2: axis, y2: head + length },
    months: marks.months.map(({ at }) => ({ x1: 0, y1: along(at), x2: AREA_LEFT + AREA_WIDTH, y2: along(at) })),
    today: marks.today === null ? null : { x1: 0, y1: along(marks.today), x2: labelsX - 12, y2: along(marks.today) },
    texts: [],
    icons: [],
    tracks: marks.lanes.map((_, lane) => {
      const x = laneX(lane) - ICON.width / 2
      return { x1: x, y1: head, x2: x, y2: head + length }
    }),
    loads: [],
    bars: marks.bars.map(({ from, to, due }, index) => {
      const x = barX(barRows[index] ?? 0) - BAR / 2
      const tick = { x1: x - 3, y1: along(due), x2: x + BAR + 3, y2: along(due) }
      return { x, y: along(from), width: BAR, height: round(along(to) - along(from)), due: tick }
    }),
    leaders: [],
  }

  let free = axis + 4
  if (marks.heatTop > 0) {
    const words = ['Heating', shortTop(marks.heatTop)]
    const end = Math.max(axis - 4, ...words.map((line) => textWidth(line)))
    drawing.texts.push(textAt(end, 0, words, { anchor: 'end' }))
    free = Math.max(free, end + 8)
  }
  if (marks.coolTop > 0) drawing.texts.push(textAt(free, 0, ['Cooling', shortTop(marks.coolTop)]))
  for (const { at, name, year } of marks.months) {
    const text = textAt(0, along(at) + 3, year === null ? [name] : [name, String(year)], { tone: 'soft' })
    if (text.box.y + text.box.height <= drawing.height) drawing.texts.push(text)
  }
  marks.lanes.forEach((lane, index) => {
    const x = laneX(index)
    if (lane.letter)
      drawing.texts.push(textAt(x, (2 + (letterRows > 1 ? index % 2 : 0)) * LINE, [lane.letter], { anchor: 'middle' }))
    for (const { at, kind } of lane.events) drawing.icons.push({ x, y: along(at), kind })
    if (!lane.load) return
    const [left, from, to] = [x - ICON.width / 2, along(lane.load.from), along(lane.load.to)]
    drawing.loads.push(`${left},${from} ${left},${to} ${round(left + ICON.width * lane.load.share)},${to}`)
  })

  const starts = spread(
    notes.map(({ at }, index) => ({ middle: along(at), size: sizes[index] ?? LINE })),
    head,
    head + length,
  )
  notes.forEach(({ at, fromX, lines, isToday }, index) => {
    const top = round((starts[index] ?? 0) + NOTE_GAP / 2)
    const middle = round(top + (lines.length * LINE) / 2)
    drawing.texts.push(textAt(labelsX, top, lines, isToday ? { tone: 'strong' } : {}))
    if (!isToday) drawing.leaders.push({ x1: fromX, y1: along(at), x2: labelsX - 12, y2: along(at) })
    drawing.leaders.push({ x1: labelsX - 12, y1: along(at), x2: labelsX - 3, y2: middle })
  })
  return drawing
}

// Over the narrow areas there is room for "up to 7 h", and "a day" is said in the caption.
function shortTop(hours: number): string {
  return topHours(hours).replace(' a day', '')
}

interface NotePlaces {
  laneX: (lane: number) => number
  barX: (lane: number) => number
  barRows: number[]
  width: number
}

/** Everything that wants words, by day: today, what filters need (one note for those of one day), windows. */
function noteList(marks: YearMarks, todayWords: string, { laneX, barX, barRows, width }: NotePlaces): Note[] {
  const notes: Note[] = []
  if (marks.today !== null)
    notes.push({ at: marks.today, fromX: 0, lines: wrapText(todayWords, width / 1.08), isToday: true })
  const days = new Map<string, { at: number; say: string; letters: string; lane: number }>()
  marks.lanes.forEach((lane, index) => {
    for (const { at, date, deed } of lane.events) {
      // Several lanes leave little room: their shapes say what is done, and the key explains the shapes.
      const say = lane.letter ? date : `${date}, ${deed}`
      const letters = days.get(say)?.letters ?? ''
      const isNew = lane.letter && !letters.includes(lane.letter)
      days.set(say, { at, say, letters: isNew ? `${letters} ${lane.letter}` : letters, lane: index })
    }
  })
  for (const { at, say, letters, lane } of days.values()) {
    notes.push({ at, fromX: laneX(lane) + ICON.width / 2, lines: wrapText(say + letters, width), isToday: false })
  }
  marks.bars.forEach(({ from, to, name, dates }, index) => {
    const fromX = barX(barRows[index] ?? 0) + BAR / 2
    notes.push({
      at: (from + to) / 2,
      fromX,
      lines: [...wrapText(name, width), ...wrapText(dates, width)],
      isToday: false,
    })
  })
  return notes.sort((a, b) => a.at - b.at)
}
