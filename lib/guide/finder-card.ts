import type { FilterPlace, Light } from '@/lib/core/household'
import type { FinderCardTexts, FinderDraft, PlaceText } from './finder-types'

/** The filter card as data: where, arrow, how to reach it, what to do when it is clogged. Size and photo are added by the page. */
export interface FinderCard {
  place: FilterPlace
  name: string
  drawing: PlaceText['drawing']
  arrow: PlaceText['arrow']
  opener: 'you' | 'ask'
  /** The page asks for the size where it can be typed; a screen has none. */
  sizeFrom: 'printed' | 'measured' | 'unknown' | 'none'
  light: Light | null
  reach: string[]
  clogged: string[]
}

/** Makes the card of a finished draft. Throws if the draft has no place: a finder that ends so is broken. */
export function finderCard(draft: FinderDraft, texts: FinderCardTexts): FinderCard {
  const place = texts.places.find((row) => row.place === draft.place)
  if (place === undefined) throw new Error(`no card without a place: ${draft.place}`)
  const opener = draft.opener ?? 'ask'
  const isScreen = place.place === 'ductless-head' || place.place === 'ventilator'
  return {
    place: place.place,
    name: place.name,
    drawing: place.drawing,
    arrow: place.arrow,
    opener,
    sizeFrom: isScreen ? 'none' : (draft.sizeFrom ?? 'unknown'),
    light: draft.light === 'damaged' ? null : (draft.light ?? null),
    reach: reachOf(draft, opener, place, texts),
    clogged: cloggedOf(draft, isScreen, texts),
  }
}

function reachOf(draft: FinderDraft, opener: 'you' | 'ask', place: PlaceText, texts: FinderCardTexts): string[] {
  if (opener === 'ask') return texts.ask
  return [
    ...(draft.reach === 'stool' ? texts.stool : []),
    ...place.reach,
    ...(place.place === 'in-cabinet' ? texts.cabinet : []),
    ...texts.backOn,
  ]
}

function cloggedOf(draft: FinderDraft, isScreen: boolean, texts: FinderCardTexts): string[] {
  const isWashable = isScreen || draft.washable === 'yes'
  if (draft.light === 'damaged') return texts.damaged
  if (isWashable) return texts.washable
  const medium = draft.washable === 'unknown' || draft.washable === undefined ? texts.unknownMedium : []
  return draft.spare === 'yes' ? [...texts.fresh, ...medium] : [...texts.clogged, ...medium]
}
