import type { FilterPlace, Light } from '@/lib/core/household'
import type { DrawingId } from './drawing-ids'

/** What a screen asks a person to do: a closed list, so that a forbidden kind of step cannot be written at all. */
export const FINDER_ACTIONS = [
  'look',
  'fan-on',
  'tissue',
  'thermostat-off',
  'head-off',
  'ventilator-off',
  'power-switch-off',
  'open-grille',
  'open-slot',
  'open-media-door',
  'open-filter-door',
  'open-flap',
  'open-ventilator',
  'measure',
  'hold-to-lamp',
] as const
export type FinderAction = (typeof FINDER_ACTIONS)[number]

/** What the answers have told so far; the filter card is made of it. Absent: not asked or not known. */
export interface FinderDraft {
  whose?: 'own' | 'rent' | 'others'
  mayOpen?: 'yes' | 'no'
  place?: FilterPlace
  /** `ask`: neither floor nor low stool reaches it. */
  reach?: 'floor' | 'stool' | 'ask'
  /** Who opens it: the person, or the landlord or a technician. */
  opener?: 'you' | 'ask'
  sizeFrom?: 'printed' | 'measured' | 'unknown'
  light?: Light | 'damaged'
  washable?: 'yes' | 'no' | 'unknown'
  spare?: 'yes' | 'no'
}

export interface FinderAnswer {
  /** Stands in the address: lower-case letters and dashes, unique on its screen. */
  id: string
  say: string
  next: string
  sets?: FinderDraft
}

interface FinderNode {
  id: string
  title: string
  text: string[]
  drawings?: DrawingId[]
  cautions?: string[]
  /** Evidence ids of the safety basis, `CP` common practice, `POL` our own policy. */
  sources: string[]
}

export interface FinderQuestion extends FinderNode {
  kind: 'question'
  asks: FinderAction[]
  answers: FinderAnswer[]
}

/** Not shown: goes on by what is already known. */
export interface FinderFork {
  kind: 'fork'
  id: string
  on: keyof FinderDraft
  to: Record<string, string>
  otherwise: string
}

/** The end that makes a filter card of the draft. */
export interface FinderCardEnd extends FinderNode {
  kind: 'card'
}

/** An end without a card. `severity` as in the guide: 0 normal · 1 schedule · 2 urgent · 3 leave and call. */
export interface FinderReferral extends FinderNode {
  kind: 'referral'
  severity: 0 | 1 | 2 | 3
  /** Offer the self-check guide from here. Never at severity 3: there is nothing more to tap. */
  offersCheck: boolean
}

export type FinderEnd = FinderCardEnd | FinderReferral
export type FinderScreen = FinderQuestion | FinderFork | FinderEnd

export interface Finder {
  start: string
  screens: FinderScreen[]
}

/** What the card says of one place. */
export interface PlaceText {
  place: FilterPlace
  name: string
  arrow: { say: string; drawing: DrawingId } | null
  reach: string[]
  drawing: DrawingId
  sources: string[]
}

export interface FinderCardTexts {
  places: PlaceText[]
  ask: string[]
  stool: string[]
  cabinet: string[]
  backOn: string[]
  clogged: string[]
  damaged: string[]
  washable: string[]
  unknownMedium: string[]
  fresh: string[]
}
