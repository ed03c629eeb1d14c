import type { FilterPlace, Medium, NominalSize } from './household'

const EIGHTHS = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞']

/** `16 × 25 × 1`, `15½ × 24½ × ¾`: inches, as printed on the frame. Trade sizes stay in inches everywhere. */
export function sizeInWords({ widthIn, heightIn, depthIn }: NominalSize): string {
  return [widthIn, heightIn, depthIn].map(inches).join(' × ')
}

/** A supply's size: `16x25x1` is `16 × 25 × 1`. */
export function sizeTextInWords(size: string): string {
  return size
    .split('x')
    .map((side) => inches(Number(side)))
    .join(' × ')
}

/** `15½`, `4⅜`; what no eighth says is rounded to hundredths: `15.51`. */
export function inches(value: number): string {
  const whole = Math.floor(value)
  const eighth = (value - whole) * 8
  if (!Number.isInteger(eighth)) return String(Math.round(value * 100) / 100)
  return `${whole === 0 && eighth > 0 ? '' : whole}${EIGHTHS[eighth] ?? ''}`
}

const PLACES: Record<FilterPlace, string> = {
  'ceiling-grille': 'ceiling grille',
  'wall-grille': 'wall grille',
  'floor-grille': 'floor grille',
  'furnace-slot': 'slot beside the furnace',
  'in-cabinet': 'furnace cabinet',
  'media-cabinet': 'media cabinet beside the furnace',
  'ductless-head': 'wall unit',
  ventilator: 'ventilator',
}

/** `wall grille`. */
export function placeName(place: FilterPlace): string {
  return PLACES[place]
}

/** `in the wall grille`. */
export function placeInWords(place: FilterPlace): string {
  return `in the ${PLACES[place]}`
}

const ARROWS: Record<FilterPlace, string | null> = {
  'ceiling-grille': 'arrow up, into the ceiling',
  'wall-grille': 'arrow into the wall',
  'floor-grille': 'arrow down, into the floor',
  'furnace-slot': 'arrow towards the furnace',
  'in-cabinet': 'arrow towards the blower',
  'media-cabinet': 'arrow towards the furnace',
  'ductless-head': null,
  ventilator: null,
}

/** Which way the arrow on the frame points: with the air, away from the room. Null for screens, which have none. */
export function arrowInWords(place: FilterPlace): string | null {
  return ARROWS[place]
}

const MEDIA_NAMES: Record<Medium, string> = {
  fiberglass: 'fiberglass',
  pleated: 'pleated',
  media: 'deep pleated media',
  washable: 'washable',
  screen: 'screen',
}

/** `pleated, MERV 8`; without a rating `pleated`. */
export function mediumInWords(medium: Medium, merv?: number | null): string {
  return merv === undefined || merv === null ? MEDIA_NAMES[medium] : `${MEDIA_NAMES[medium]}, MERV ${merv}`
}
