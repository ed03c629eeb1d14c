import type { ReactNode } from 'react'
import { Drawing } from '@/app/parts/drawings/drawing'
import { FINDER_ESCAPE } from '@/content/finder/finder'
import { lightInWords } from '@/lib/core/words'
import { fillEmergency } from '@/lib/guide/export'
import type { FinderCard } from '@/lib/guide/finder-card'
import type { ReadSize } from './read-size'

interface FilterCardProps {
  card: FinderCard
  title: string
  size: ReadSize | null
  /** Print the hazard sentence with it: not where the page says it anyway. */
  hazards: boolean
  level?: 1 | 2
  children?: ReactNode
}

/** Where the filter is, its size and arrow, how to reach it, and what to do when it is clogged. */
export function FilterCard({ card, title, size, hazards, level = 1, children }: FilterCardProps) {
  const Heading = level === 1 ? 'h1' : 'h2'
  const Part = level === 1 ? 'h2' : 'h3'
  return (
    <article className="filter-card">
      <Heading>{title}</Heading>
      {hazards && <p className="find-escape">{fillEmergency(FINDER_ESCAPE)}</p>}
      <p className="filter-card-place">{card.name}</p>
      {card.sizeFrom !== 'none' && (
        <p className="filter-card-size">
          {size?.kind === 'read' ? (
            <>
              <span>Size to buy, inches</span> <strong>{size.text}</strong>
            </>
          ) : (
            <>
              <span>Size</span> <strong className="blank">____ × ____ × ____</strong>
            </>
          )}
        </p>
      )}
      {size?.kind === 'read' && size.notes.map((note) => <p key={note}>{note}</p>)}
      {children}
      {card.arrow && <p className="find-line">{card.arrow.say}</p>}
      <div className="drawings">
        <Drawing id={card.drawing} />
      </div>
      {card.light && <p>Held to a lamp: {lightInWords(card.light).toLowerCase()}.</p>}
      <Part>{card.opener === 'ask' ? 'Who opens it' : 'How to reach it'}</Part>
      <Lines lines={card.reach} />
      <Part>{card.opener === 'ask' ? 'If it is clogged' : 'The filter itself'}</Part>
      <Lines lines={card.clogged} />
    </article>
  )
}

function Lines({ lines }: { lines: string[] }) {
  return (
    <ol className="card-lines">
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ol>
  )
}
