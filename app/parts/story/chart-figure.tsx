import { type ReactNode, useId } from 'react'
import { FONT } from '../label-layout'
import { TableBox } from '../table-box'

/** Widths that a drawing is laid out for, in its own units: across a desk or paper, and on a phone. */
export const WIDTHS = { wide: 760, narrow: 350 } as const

/** A drawing laid out for one width. */
export interface Drawn {
  height: number
  body: ReactNode
}

interface ChartFigureProps {
  title: string
  /** What there is to see, in a sentence or two. */
  desc: string
  /** `id` is unique on the page, for patterns. */
  draw: (width: number, id: string) => Drawn
  /** The caption: what the shapes stand for. */
  children: ReactNode
  table: ReactNode
}

/** A drawing for a desk and one for a phone, what its shapes mean, and the same as a table. */
export function ChartFigure({ title, desc, draw, children, table }: ChartFigureProps) {
  const page = useId()
  return (
    <figure className="chart" aria-label={title}>
      {(['wide', 'narrow'] as const).map((shape) => {
        const id = `${page}-${shape}`
        const { height, body } = draw(WIDTHS[shape], id)
        return (
          <svg
            key={shape}
            className={`chart-${shape}`}
            viewBox={`0 0 ${WIDTHS[shape]} ${height}`}
            role="img"
            aria-labelledby={`${id}-title`}
            aria-describedby={`${id}-desc`}
            fontSize={FONT}
          >
            <title id={`${id}-title`}>{title}</title>
            <desc id={`${id}-desc`}>{desc} The table below says the same.</desc>
            {body}
          </svg>
        )
      })}
      <figcaption>{children}</figcaption>
      <details className="chart-table">
        <summary>{title}, as a table</summary>
        <TableBox name={title}>{table}</TableBox>
      </details>
    </figure>
  )
}

/** One shape of a drawing and what it stands for. */
export function KeyLine({ shape, children }: { shape: ReactNode; children: ReactNode }) {
  return (
    <li>
      <svg viewBox="0 0 34 24" aria-hidden="true" focusable="false">
        {shape}
      </svg>
      {children}
    </li>
  )
}
