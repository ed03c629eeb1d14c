import type { Light } from './household'
import { type Box, findPanels, surroundLight } from './light-panels'
import { type LightField, lightField, type Picture } from './linear-light'
import { distribution } from './normal'
import { clampBox, edgeWidth, type PanelLight, panelLight } from './panel-light'
import type { Figure } from './tables'

/**
 * The light test by camera: one picture of this filter and a new one, or a sheet of plain paper, side by side
 * before the same lamp, a dark gap between them. Both are in one exposure, so that only their ratio counts.
 */

export type LightReference = 'new-filter' | 'paper'

export const LIGHT_FIGURES = [
  'fullRatio',
  'clearBelowLoad',
  'darkAboveLoad',
  'paperOverNew',
  'spreadNew',
  'spreadPaper',
  'mostClipped',
  'leastReferenceLight',
  'mostUnevenness',
  'mostLampBias',
  'mostEdgeWidth',
  'mostRatio',
] as const
export type LightPictureTable = Record<(typeof LIGHT_FIGURES)[number], Figure>

export const PICTURE_FAULTS = [
  'too-small',
  'no-panels',
  'bad-box',
  'over-exposed',
  'under-exposed',
  'blurred',
  'uneven-lamp',
  'lopsided',
  'swapped',
] as const
export type PictureFaultCode = (typeof PICTURE_FAULTS)[number]

export interface PictureFault {
  code: PictureFaultCode
  say: string
}

export type LightReading =
  | {
      kind: 'read'
      light: Light
      /** The probability of `light`, 0–1. Below 0.6 the person should judge by eye. */
      sureness: number
      odds: Record<Light, number>
      /** Light through this filter over light through a new one. */
      ratio: number
      panels: Panels
      say: string
    }
  | { kind: 'refused'; faults: PictureFault[]; panels: Panels | null }

export interface Panels {
  thisFilter: Box
  reference: Box
}

export interface LightQuestion {
  reference: LightReference
  /** On which side of the picture this filter is. */
  side: 'left' | 'right'
  /** Drawn by the person, in pixels; found by itself if absent. */
  panels?: Panels
}

const LEAST_SIDE_PX = 64

const SAY: Record<PictureFaultCode, string> = {
  'too-small': 'The picture is too small. Take it again with the camera itself.',
  'no-panels':
    'I cannot find two bright panels side by side. Leave a dark gap between them, darken the room, or draw a box on each.',
  'bad-box': 'A box is too small or outside the picture. Draw it over the middle of the panel.',
  'over-exposed': 'The picture is too bright to compare. Step back from the lamp or use a weaker one.',
  'under-exposed': 'The picture is too dark to compare. Use a brighter lamp or go nearer to it.',
  blurred: 'The picture is blurred. Rest the phone on something and take it again.',
  'uneven-lamp': 'The lamp makes one bright spot. Hold both farther from it, or hang a white sheet before the lamp.',
  lopsided: 'The lamp shines more on one side. Put it behind the gap between the two.',
  swapped: 'Your filter lets through more light than the new one. Are they on the sides you said?',
}

/**
 * Tells how much light a filter lets through, or every reason why this picture cannot tell.
 * Give it at most about 1200 pixels a side: more only costs time. Throws only on bytes that are no picture.
 */
export function readLightPicture(picture: Picture, question: LightQuestion, table: LightPictureTable): LightReading {
  const field = lightField(picture)
  if (Math.min(field.width, field.height) < LEAST_SIDE_PX) return refuse(['too-small'], null)
  const panels = question.panels ?? found(field, question.side)
  if (panels === null) return refuse(['no-panels'], null)
  const [thisBox, referenceBox] = [clampBox(field, panels.thisFilter), clampBox(field, panels.reference)]
  if (thisBox === null || referenceBox === null) return refuse(['bad-box'], panels)
  const mine = panelLight(field, thisBox)
  const reference = panelLight(field, referenceBox)
  // How much brighter the lamp makes the reference's place than this filter's: 0 if it stands behind the gap.
  const lampBias = ((mine.slope + reference.slope) / 2) * (centre(referenceBox) - centre(thisBox))
  const ratio = ratioOf({ field, mine, reference, question, table })
  const codes = faultCodes({ field, thisBox, referenceBox, mine, reference, lampBias, ratio, question, table })
  if (codes.length > 0) return refuse(codes, panels)
  const spread = question.reference === 'paper' ? table.spreadPaper.value : table.spreadNew.value
  const deviation = Math.hypot(spread, mine.error, reference.error, lampBias / 2)
  return { kind: 'read', ...judge(ratio, deviation, table), ratio, panels }
}

/**
 * The category of a ratio, with its odds. Light falls off with the dust as exp(−k·x), where a filter loaded to its
 * end point (x = 1) passes `fullRatio` of a new one's light; `deviation` is the standard deviation of ln(ratio).
 */
export function judge(
  ratio: number,
  deviation: number,
  table: LightPictureTable,
): { light: Light; sureness: number; odds: Record<Light, number>; say: string } {
  const logFull = Math.log(table.fullRatio.value)
  const toClear = (table.clearBelowLoad.value * logFull - Math.log(ratio)) / deviation
  const toDark = (table.darkAboveLoad.value * logFull - Math.log(ratio)) / deviation
  const [clear, dark] = [distribution(-toClear), distribution(toDark)]
  const odds = { clear, half: Math.max(0, 1 - clear - dark), dark }
  const light = (['half', 'dark', 'clear'] as const).reduce((best, next) => (odds[next] > odds[best] ? next : best))
  const sureness = odds[light]
  const words = sureness >= 0.8 ? 'I am sure' : sureness >= 0.6 ? 'I am fairly sure' : 'It is close: judge by eye too'
  return {
    light,
    sureness,
    odds,
    say: `${words}: ${light}. It passes ${Math.round(ratio * 100)} % of a new filter's light.`,
  }
}

function found(field: LightField, side: 'left' | 'right'): Panels | null {
  const pair = findPanels(field)
  if (pair === null) return null
  const [left, right] = pair
  return side === 'left' ? { thisFilter: left, reference: right } : { thisFilter: right, reference: left }
}

function ratioOf(given: {
  field: LightField
  mine: PanelLight
  reference: PanelLight
  question: LightQuestion
  table: LightPictureTable
}): number {
  const { field, mine, reference, question, table } = given
  // Stray light lies over both panels alike; where the rim is brighter than the panel it is no stray light.
  const stray = Math.min(surroundLight(field), mine.mean / 2)
  const raw = Math.max((mine.mean - stray) / Math.max(reference.mean - stray, 1e-5), 1e-3)
  return question.reference === 'paper' ? raw * table.paperOverNew.value : raw
}

function faultCodes(given: {
  field: LightField
  thisBox: Box
  referenceBox: Box
  mine: PanelLight
  reference: PanelLight
  lampBias: number
  ratio: number
  question: LightQuestion
  table: LightPictureTable
}): PictureFaultCode[] {
  const { field, thisBox, referenceBox, mine, reference, lampBias, ratio, question, table } = given
  const codes: PictureFaultCode[] = []
  if (Math.max(mine.clipped, reference.clipped) > table.mostClipped.value) codes.push('over-exposed')
  if (reference.mean < table.leastReferenceLight.value) codes.push('under-exposed')
  const outward = centre(referenceBox) < centre(thisBox) ? -1 : 1
  const edges = [
    edgeWidth(field, referenceBox, reference.mean, outward),
    edgeWidth(field, thisBox, mine.mean, outward === 1 ? -1 : 1),
  ].filter((edge) => edge !== null)
  if (edges.length > 0 && Math.min(...edges) > table.mostEdgeWidth.value) codes.push('blurred')
  if (reference.unevenness > table.mostUnevenness.value) codes.push('uneven-lamp')
  if (Math.abs(lampBias) > table.mostLampBias.value) codes.push('lopsided')
  const most = table.mostRatio.value * (question.reference === 'paper' ? Math.exp(table.spreadPaper.value) : 1)
  if (codes.length === 0 && ratio > most) codes.push('swapped')
  return codes
}

function refuse(codes: PictureFaultCode[], panels: Panels | null): LightReading {
  return { kind: 'refused', faults: codes.map((code) => ({ code, say: SAY[code] })), panels }
}

function centre(box: Box): number {
  return box.x + box.width / 2
}
