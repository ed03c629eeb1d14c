'use client'

import Link from 'next/link'
import { type ChangeEvent, useState } from 'react'
import { FINDER_CARD_TEXTS } from '@/content/finder/card-texts'
import { FINDER } from '@/content/finder/finder'
import { finderCard } from '@/lib/guide/finder-card'
import { answersFromAddress, replayFinder } from '@/lib/guide/finder-replay'
import { FilterCard } from '../filter-card'
import { dropCard, type KeptCard, keepCard, listKeptCards } from '../kept-cards'
import { PrintButton } from '../print-button'
import { readSize } from '../read-size'
import { smallerPicture } from '../smaller-picture'

/** The cards of this phone, made anew from their answers each time. */
export function PhoneCards() {
  const [cards, setCards] = useState<KeptCard[]>(() => listKeptCards(safeStore()))
  const [dropped, setDropped] = useState<KeptCard | null>(null)
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
          addPhoto={async (file) => {
            const photo = await photoText(file)
            const isKept = photo !== null && keepCard(safeStore(), { ...card, photo })
            setCards(listKeptCards(safeStore()))
            return isKept
          }}
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

interface KeptProps {
  card: KeptCard
  /** Gives false where the picture cannot be read or kept. */
  addPhoto: (file: File) => Promise<boolean>
  drop: () => void
}

function Kept({ card, addPhoto, drop }: KeptProps) {
  const [hasFailed, setFailed] = useState(false)
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
      >
        {/* biome-ignore lint/performance/noImgElement: the picture never leaves this phone. */}
        {card.photo && <img className="kept-photo" src={card.photo} alt="The filter’s place, as you took it" />}
        <div className="field no-print">
          <label className="label" htmlFor={`photo-${card.answers}`}>
            {card.photo ? 'Another photo of it' : 'A photo of its place'}
          </label>
          <input
            id={`photo-${card.answers}`}
            type="file"
            accept="image/*"
            onChange={async ({ currentTarget }: ChangeEvent<HTMLInputElement>) => {
              const file = currentTarget.files?.[0]
              if (file) setFailed(!(await addPhoto(file)))
            }}
          />
          {hasFailed && (
            <p role="alert">This is no picture, or the phone has no room for it. The card itself is kept.</p>
          )}
        </div>
      </FilterCard>
      <button type="button" className="quiet no-print" onClick={drop}>
        Take this card off the phone
      </button>
    </section>
  )
}

/** Small enough that twenty of them fit where a browser lets a page keep things. */
async function photoText(file: File): Promise<string | null> {
  const smaller = await smallerPicture(file, 640)
  if (!smaller) return null
  return new Promise((resolve) => {
    const reader = new FileReader()
    reader.onload = () => resolve(String(reader.result))
    reader.onerror = () => resolve(null)
    reader.readAsDataURL(smaller)
  })
}

function safeStore(): Pick<Storage, 'getItem' | 'setItem'> {
  try {
    return window.localStorage
  } catch {
    return { getItem: () => null, setItem: () => {} }
  }
}
