import Link from 'next/link'
import { FINDER_CARD_TEXTS } from '@/content/finder/card-texts'
import { type TypedSize, typedSize } from '@/lib/forms/size-form'
import { type FinderWalk, finderHref } from '@/lib/guide/finder-address'
import { finderCard } from '@/lib/guide/finder-card'
import { FilterCard } from './filter-card'
import { KeepCard } from './keep-card'
import { PrintButton } from './print-button'
import { readSize } from './read-size'
import { SizeForm } from './size-form'
import { TurnedOnForm } from './turned-on-form'

interface CardScreenProps {
  walk: FinderWalk
  answers: string
  began: string
  field: (name: string) => string
  rest: Record<string, string>
}

/** The filter card of a finished walk, with the size still to be typed, and what can be done with it. */
export function CardScreen({ walk, answers, began, field, rest }: CardScreenProps) {
  const card = finderCard(walk.draft, FINDER_CARD_TEXTS)
  const typed = typedSize(field)
  const size = typed === null ? null : readSize(typed)
  const hasSize = card.sizeFrom !== 'none'
  const back = finderHref({ a: answers, t: began, rest })
  const save = back.replace('/find?', '/find/save?')
  return (
    <>
      <FilterCard card={card} title={walk.screen.title} size={size} hazards={false}>
        {hasSize && (
          <SizeForm
            typed={typed ?? emptySize(card.sizeFrom === 'measured' ? 'measured' : 'printed')}
            faults={size?.kind === 'refused' ? size.faults : []}
            isKnown={size?.kind === 'read'}
            hidden={{ a: answers, t: began, home: field('home') }}
          />
        )}
      </FilterCard>
      <div className="buttons no-print">
        <KeepCard answers={answers} typed={typed} size={size?.kind === 'read' ? size.text : null} />
        <Link className="button" href={save} prefetch={false}>
          {field('home') ? 'Save it to this home' : 'Save it to a home'}
        </Link>
        <PrintButton />
      </div>
      {card.opener === 'you' && (
        <section className="no-print" aria-labelledby="turned-on">
          <h2 id="turned-on">When it is on again</h2>
          {field('on') === '1' ? (
            <p role="status" className="notice">
              Good. If it stops later, do not try again: go to <Link href="/check">Check</Link>.
            </p>
          ) : (
            <>
              <p className="find-line">How did it start? If not as always, that was the one start: leave it now.</p>
              <TurnedOnForm home={field('home')} began={began} back={back} />
            </>
          )}
        </section>
      )}
      <p className="find-line no-print">
        Nothing on this page has been stored yet. “Keep” stays on this phone; “Save” needs an account or a renter’s
        link.
      </p>
    </>
  )
}

function emptySize(from: TypedSize['from']): TypedSize {
  return { from, w: '', h: '', d: '', u: 'in' }
}
