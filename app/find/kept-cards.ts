import { type TypedSize, typedSize } from '@/lib/forms/size-form'

/** A card that stays on this phone: the answers it was made of and the size as typed; all else follows from them. */
export interface KeptCard {
  answers: string
  typed: TypedSize | null
  /** A small picture of it as a data address. */
  photo?: string
}

const KEY = 'plenum.filter-cards'
// More than any home has; an old one makes room.
const MOST = 20
const PHOTO = /^data:image\/jpeg;base64,[A-Za-z0-9+/=]{1,400000}$/

/** The cards kept on this phone, newest first. What is no card, or another program's, is passed over. */
export function listKeptCards(store: Pick<Storage, 'getItem'>): KeptCard[] {
  try {
    const found: unknown = JSON.parse(store.getItem(KEY) ?? '[]')
    if (!Array.isArray(found)) return []
    return found.flatMap((card) => {
      if (typeof card?.answers !== 'string' || !/^[a-z.-]{1,400}$/.test(card.answers)) return []
      const typed = card.typed ?? {}
      const photo = PHOTO.test(text(card.photo)) ? { photo: text(card.photo) } : {}
      return [{ answers: card.answers, typed: typedSize((name) => text(typed[name])), ...photo }]
    })
  } catch {
    return []
  }
}

function text(value: unknown): string {
  return typeof value === 'string' ? value : ''
}

/** Keeps a card, in place of one of the same answers. Gives false where the phone lets nothing be kept. */
export function keepCard(store: Pick<Storage, 'getItem' | 'setItem'>, card: KeptCard): boolean {
  const others = listKeptCards(store).filter(({ answers }) => answers !== card.answers)
  return write(store, [card, ...others].slice(0, MOST))
}

/** Takes a card off this phone. */
export function dropCard(store: Pick<Storage, 'getItem' | 'setItem'>, answers: string): boolean {
  return write(
    store,
    listKeptCards(store).filter((card) => card.answers !== answers),
  )
}

function write(store: Pick<Storage, 'setItem'>, cards: KeptCard[]): boolean {
  try {
    store.setItem(KEY, JSON.stringify(cards))
    return true
  } catch {
    return false
  }
}
