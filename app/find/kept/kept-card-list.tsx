'use client'

import Link from 'next/link'
import { useEffect, useState } from 'react'
import { FINDER_CARD_TEXTS } from '@/content/finder/card-texts'
import { FINDER } from '@/content/finder/finder'
import { finderCard } from '@/lib/guide/finder-card'
import { answersFromAddress, replayFinder } from '@/lib/guide/finder-replay'
import { FilterCard } from '../filter-card'
import { dropCard, type KeptCard, keepCard, listKeptCards } from '../kept-cards'
import { PrintButton } from '../print-button'
import { readSize } from '../read-size'

/** The cards of this phone, made anew from their answers each time. */
export function KeptCardList() {
  const [cards, setCards] = useState<KeptCard[] | null>(null)
  const [dropped, setDropped] = useState<KeptCard | null>(null)
  useEffect(() => setCards(listKeptCards(safeStore())), [])
  if (cards === null) {
    return <p>The cards are kept on the phone itself. To see them the browser has to run scripts.</p>
  }
  return (
    <>
      {dropped && (
        <p className="notice" role="status">
          Taken off this phone.{' '}
          <button
            type="button"
            className="quiet"
            onClick={() => {
              keepCard(safeStore(), dropped)
              setDropped(null)
              setCards(listKeptCards(safeStore()))
            }}
          >
            Undo
          </button>
        </p>
      )}
      {cards.length === 0 && (
        <p className="lead">
          There is none yet. <Link href="/find">Find your filter</Link>, and keep its card at the end.
        </p>
      )}
      {cards.map((card) => (
        <Kept
          key={card.answers}
          card={card}
          drop={() => {
            dropCard(safeStore(), card.answers)
            setDropped(card)
            setCards(listKeptCards(safeStore()))
          }}
        />
      ))}
      {cards.length > 0 && (
        <div className="buttons">
          <PrintButton />
          <Link className="button" href="/find">
            Find another filter
          </Link>
        </div>
      )}
    </>
  )
}

function Kept({ card, drop }: { card: KeptCard; drop: () => void }) {
  const state = replayFinder(FINDER, answersFromAddress(card.answers))
  // A card of an older version of the finder may fit no more.
  if (state.screen.kind !== 'card' || state.stray.length > 0) return null
  const size = card.typed && readSize(card.typed)
  return (
    <section className="kept-card">
      <FilterCard
        card={finderCard(state.draft, FINDER_CARD_TEXTS)}
        title="Filter card"
        size={size}
        hazards={true}
        level={2}
      />
      <button type="button" className="quiet no-print" onClick={drop}>
        Take this card off the phone
      </button>
    </section>
  )
}

function safeStore(): Pick<Storage, 'getItem' | 'setItem'> {
  try {
    return window.localStorage
  } catch {
    return { getItem: () => null, setItem: () => {} }
  }
}
