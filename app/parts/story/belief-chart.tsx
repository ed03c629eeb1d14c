import { scaleLinear } from 'd3-scale'
import { area, curveBasis, line } from 'd3-shape'
import type { Belief } from '@/lib/core/belief'
import { dayText } from '@/lib/core/day'
import { dateInWords, plural } from '@/lib/core/day-words'
import type { BeliefStep } from '@/lib/core/filter-story'
import type { Theta } from '@/lib/core/learning'
import { LOG_THETA } from '@/lib/core/learning'
import { numberInWords } from '@/lib/core/unit-words'
import { lightInWords } from '@/lib/core/words'
import { round } from '../year-layout'
import { ChartFigure, type Drawn, KeyLine } from './chart-figure'

const TOP = 12
const ROOM = 190
const BOTTOM = 48
const SIDE = 12
/** Factors on the axis, each twice the one before. */
const FACTORS = [0.25, 0.5, 1, 2, 4]
/** Earlier curves than the first and the last of these would only be a thicket. */
const CURVES = 5

/** The home's own dust factor as a curve: before anything was seen, after each look, and now. */
export function BeliefChart({ name, steps }: { name: string; steps: BeliefStep[] }) {
  const title = `What was learned of the dust, ${name}`
  const last = steps.at(-1) as BeliefStep
  const looks = steps.length - 1
  const said =
    looks === 0
      ? `Nothing was seen yet, so this home may have anything from ${rangeInWords(last.theta)} times the dust that its people, pets and floors suggest. Each look narrows that.`
      : `After ${plural(looks, 'look')} it has about ${times(last.theta.q50)} times the dust that its people, pets and floors suggest; with a chance of 80 % between ${rangeInWords(last.theta, 'and')} times.`
  return (
    <ChartFigure
      title={title}
      desc={`Curves over the dust factor from a quarter to four times: the higher the curve, the likelier the factor. ${said}`}
      draw={(width) => draw(steps, width)}
      table={<BeliefTable title={title} steps={steps} />}
    >
      <p>{said}</p>
      <ul className="year-key">
        {looks > 0 && <KeyLine shape={<path className="belief-first" d="M1 20Q17 4 33 20" />}>before any look</KeyLine>}
        {looks > 1 && (
          <KeyLine shape={<path className="belief-between" d="M1 20Q17 2 33 20" />}>after earlier looks</KeyLine>
        )}
        <KeyLine shape={<path className="belief-now" d="M1 21Q17 -2 33 21" />}>
          {looks > 0 ? 'now' : 'before any look'}; filled: the middle 80 %
        </KeyLine>
      </ul>
    </ChartFigure>
  )
}

interface CurvePoint {
  at: number
  density: number
}

function curveOf({ share }: Belief): CurvePoint[] {
  const step = (LOG_THETA[1] as number) - (LOG_THETA[0] as number)
  return Array.from(LOG_THETA, (at, i) => ({ at, density: (share[i] as number) / step }))
}

function draw(steps: BeliefStep[], width: number): Drawn {
  const first = steps[0] as BeliefStep
  const last = steps.at(-1) as BeliefStep
  const between = steps.slice(1, -1).slice(-(CURVES - 2))
  const shown = [...(steps.length > 1 ? [first] : []), ...between, last]
  const top = Math.max(...shown.flatMap(({ belief }) => curveOf(belief).map(({ density }) => density)))
  const x = scaleLinear([Math.log(0.2), Math.log(5)], [SIDE, width - SIDE])
  const y = scaleLinear([0, top], [TOP + ROOM, TOP])
  const inRoom = (points: CurvePoint[]) => points.filter(({ at }) => x(at) >= SIDE && x(at) <= width - SIDE)
  const stroke = line<CurvePoint>()
    .x(({ at }) => round(x(at)))
    .y(({ density }) => round(y(density)))
    .curve(curveBasis)
  const fill = area<CurvePoint>()
    .x(({ at }) => round(x(at)))
    .y0(y(0))
    .y1(({ density }) => round(y(density)))
    .curve(curveBasis)
  const { q10, q50, q90 } = last.theta
  const likely = curveOf(last.belief).filter(({ at }) => at >= Math.log(q10) && at <= Math.log(q90))
  return {
    height: TOP + ROOM + BOTTOM,
    body: (
      <>
        <path className="belief-likely" d={fill(inRoom(likely)) ?? ''} />
        {steps.length > 1 && <path className="belief-first" d={stroke(inRoom(curveOf(first.belief))) ?? ''} />}
        {between.map(({ look, belief }) => (
          <path
            key={`${look?.filter} ${look?.on}`}
            className="belief-between"
            d={stroke(inRoom(curveOf(belief))) ?? ''}
          />
        ))}
        <path className="belief-now" d={stroke(inRoom(curveOf(last.belief))) ?? ''} />
        <line className="belief-middle" x1={x(Math.log(q50))} x2={x(Math.log(q50))} y1={y(0)} y2={TOP} />
        <line className="year-axis" x1={SIDE} x2={width - SIDE} y1={y(0)} y2={y(0)} />
        {FACTORS.map((factor) => (
          <text
            key={factor}
            className="year-text year-text-soft"
            x={x(Math.log(factor))}
            y={TOP + ROOM + 19}
            textAnchor="middle"
          >
            {factor === 0.25 ? '¼' : factor === 0.5 ? '½' : factor}×
          </text>
        ))}
        <text className="year-text year-text-soft" x={SIDE} y={TOP + ROOM + 40}>
          cleaner
        </text>
        <text className="year-text year-text-soft" x={width - SIDE} y={TOP + ROOM + 40} textAnchor="end">
          dustier
        </text>
      </>
    ),
  }
}

function times(factor: number): string {
  return numberInWords(factor, 1)
}

function rangeInWords({ q10, q90 }: Theta, word = 'to'): string {
  return `${times(q10)} ${word} ${times(q90)}`
}

function BeliefTable({ title, steps }: { title: string; steps: BeliefStep[] }) {
  return (
    <table>
      <caption>{title}</caption>
      <thead>
        <tr>
          <th scope="col">When</th>
          <th scope="col">What was seen</th>
          <th scope="col" className="number">
            Dust, middle
          </th>
          <th scope="col" className="number">
            80 % range
          </th>
        </tr>
      </thead>
      <tbody>
        {steps.map(({ look, theta }) => (
          <tr key={look ? `${look.filter} ${look.on} ${look.light}` : 'before'}>
            <th scope="row">{look ? dateInWords(dayText(look.on)) : 'Before any look'}</th>
            <td>{look ? lightInWords(look.light) : 'nothing'}</td>
            <td className="number">{numberInWords(theta.q50, 2)}×</td>
            <td className="number">
              {numberInWords(theta.q10, 2)} to {numberInWords(theta.q90, 2)}×
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
