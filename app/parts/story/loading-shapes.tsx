import { area, curveLinear, line } from 'd3-shape'
import { type LoadPoint, loadOn, type Stay } from '@/lib/core/filter-story'
import type { Light } from '@/lib/core/household'
import type { Figures } from '@/lib/core/tables'
import { round } from '../year-layout'

/** Past this a filter is simply full. */
export const MOST = 1.4

export type Scale = (value: number) => number

/** What was seen, for a key and a table. */
export const LIGHT_SEEN: Record<Light, string> = {
  clear: 'looked: light all over',
  half: 'looked: light in places',
  dark: 'looked: hardly any light',
}

/** One filter's course: what is over solid, what is to come dashed, the range as a band, its removal as a line. */
export function StayShape({ stay, today, x, y }: { stay: Stay; today: number; x: Scale; y: Scale }) {
  const band = area<LoadPoint>()
    .x(({ on }) => round(x(on)))
    .y0(({ low }) => round(y(low)))
    .y1(({ high }) => round(y(high)))
    .curve(curveLinear)
  const middle = line<LoadPoint>()
    .x(({ on }) => round(x(on)))
    .y((point) => round(y(point.middle)))
  const now = loadOn(stay, today)
  const isOver = stay.to !== null || now === null
  const past = isOver ? stay.points : [...stay.points.filter(({ on }) => on < today), now]
  const ahead = isOver ? [] : [now, ...stay.points.filter(({ on }) => on > today)]
  return (
    <>
      <path className="load-band" d={band(past) ?? ''} />
      <path className="load-band load-band-ahead" d={band(ahead) ?? ''} />
      <path className="load-line" d={middle(past) ?? ''} />
      <path className="load-line load-ahead" d={middle(ahead) ?? ''} />
      {stay.to !== null && <line className="load-changed" x1={x(stay.to)} x2={x(stay.to)} y1={y(0)} y2={y(MOST)} />}
    </>
  )
}

/** What was seen: the load that such a light stands for, with its sign. */
export function Seen({ light, at, y, figures }: { light: Light; at: number; y: Scale; figures: Figures }) {
  const [clear, dark] = [figures.clearBelow.value, figures.darkAbove.value]
  const [low, high] = { clear: [0, clear], half: [clear, dark], dark: [dark, MOST] }[light] as [number, number]
  return (
    <>
      <line className="load-seen" x1={at} x2={at} y1={y(low)} y2={y(high)} />
      <LightSign light={light} x={at} y={(y(low) + y(high)) / 2} />
    </>
  )
}

/** A lens: open where light comes through, half filled, filled where it is dark. */
export function LightSign({ light, x, y }: { light: Light; x: number; y: number }) {
  return (
    <>
      <circle className={light === 'dark' ? 'light-dark' : 'light-clear'} cx={x} cy={y} r="7" />
      {light === 'half' && <path className="light-half" d={`M${round(x)} ${round(y - 7)}a7 7 0 0 0 0 14Z`} />}
    </>
  )
}
