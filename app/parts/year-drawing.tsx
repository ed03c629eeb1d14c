import { FONT, LINE } from './label-layout'
import { YearHatches } from './year-hatches'
import { ICON, type Icon, type Line, type YearDrawing } from './year-layout'

interface YearDrawingSvgProps {
  drawing: YearDrawing
  id: string
  title: string
  desc: string
  shape: 'lying' | 'running'
}

/** Writes a laid-out year down as SVG: presentation attributes and classes only, so that a strict CSP holds. */
export function YearDrawingSvg({ drawing, id, title, desc, shape }: YearDrawingSvgProps) {
  const { width, height, heat, cool } = drawing
  return (
    <svg
      className={`year-${shape}`}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
      fontSize={FONT}
    >
      <title id={`${id}-title`}>{title}</title>
      <desc id={`${id}-desc`}>{desc}</desc>
      <YearHatches id={id} />
      {drawing.months.map((line) => (
        <Stroke key={`${line.x1} ${line.y1}`} line={line} name="year-month" />
      ))}
      {heat && <path className="year-heat" d={heat} />}
      {heat && <path d={heat} fill={`url(#${id}-heat)`} />}
      {cool && <path className="year-cool" d={cool} />}
      {cool && <path d={cool} fill={`url(#${id}-cool)`} />}
      <Stroke line={drawing.axis} name="year-axis" />
      {drawing.tracks.map((line) => (
        <Stroke key={`${line.x1} ${line.y1}`} line={line} name="year-track" />
      ))}
      {drawing.leaders.map((line, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two leaders may share every coordinate
        <Stroke key={index} line={line} name="year-leader" />
      ))}
      {drawing.today && <Stroke line={drawing.today} name="year-today" />}
      {drawing.loads.map((points) => (
        <polygon key={points} className="year-load" points={points} />
      ))}
      {drawing.bars.map(({ x, y, width: long, height: tall, due }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two windows may be one and the same
        <g key={index}>
          <rect className="year-bar" x={x} y={y} width={long} height={tall} rx="2" />
          <Stroke line={due} name="year-bar-due" />
        </g>
      ))}
      {drawing.icons.map((icon, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a look and a change may share a day
        <YearIcon key={index} icon={icon} />
      ))}
      {drawing.texts.map(({ lines, x, y, anchor, tone }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: labels never move within one drawing
        <text key={index} className={`year-text year-text-${tone}`} x={x} y={y} textAnchor={anchor}>
          {lines.map((line, row) => (
            <tspan key={line} x={x} dy={row === 0 ? 0 : LINE}>
              {line}
            </tspan>
          ))}
        </text>
      ))}
    </svg>
  )
}

/** A filter seen from its face: solid where it was changed, open where a change is expected; a lens where it was looked at. */
export function YearIcon({ icon: { x, y, kind } }: { icon: Icon }) {
  if (kind === 'looked') return <circle className="year-icon-looked" cx={x} cy={y} r="6.5" />
  const [left, top] = [x - ICON.width / 2, y - ICON.height / 2]
  const pleats = [4, 8, 12].map((across) => `M${left + across} ${top + 4}v${ICON.height - 8}`).join('')
  return (
    <g className={`year-icon-${kind}`}>
      <rect x={left + 1} y={top + 1} width={ICON.width - 2} height={ICON.height - 2} rx="1.5" />
      <path d={pleats} />
    </g>
  )
}

function Stroke({ line: { x1, y1, x2, y2 }, name }: { line: Line; name: string }) {
  return <line className={name} x1={x1} y1={y1} x2={x2} y2={y2} />
}
