import type { LightPictureTable } from '@/lib/core/light-picture'

/**
 * How the light in one picture becomes clear, half or dark. All our own choice (C): nobody publishes how much
 * light a loaded home filter passes. The camera's answer is an aid to the eye, and never more than a look.
 */
export const LIGHT_PICTURE: LightPictureTable = {
  fullRatio: {
    value: 0.25,
    unit: 'light through a filter at its end point over light through a new one',
    mark: 'C',
    reason: 'At the end point gray felt covers the pleats and the lamp is a dull shade: about a quarter.',
  },
  clearBelowLoad: { value: 0.4, unit: 'captured over capacity', mark: 'C', reason: 'The border that a look uses.' },
  darkAboveLoad: { value: 0.8, unit: 'captured over capacity', mark: 'C', reason: 'The border that a look uses.' },
  paperOverNew: {
    value: 0.6,
    unit: "light through one sheet of plain paper over a new pleated filter's",
    mark: 'C',
    reason: 'Paper differs, and so do filters; the wide spread for paper says so.',
  },
  spreadNew: {
    value: 0.15,
    unit: 'standard deviation of ln(ratio)',
    mark: 'C',
    reason: "Cameras bend the tone curve a little, and the dust's color differs.",
  },
  spreadPaper: {
    value: 0.4,
    unit: 'standard deviation of ln(ratio)',
    mark: 'C',
    reason: 'One sheet of paper may pass half as much light as another.',
  },
  mostClipped: {
    value: 0.02,
    unit: 'share of pixels',
    mark: 'C',
    reason: 'Pixels at the top of the scale hide how bright they were; two in a hundred move the mean little.',
  },
  leastReferenceLight: {
    value: 0.03,
    unit: 'linear light, 0–1',
    mark: 'C',
    reason: 'Below it a dark filter beside the reference is only a few steps above black.',
  },
  mostUnevenness: {
    value: 4,
    unit: 'brightest over darkest of nine fields of the reference',
    mark: 'C',
    reason: 'A bare bulb close by makes a spot; its place then decides the ratio.',
  },
  mostLampBias: {
    value: 0.3,
    unit: 'ln(lamp at the reference over lamp at this filter)',
    mark: 'C',
    reason: 'Half the width of a category: a lamp that far to one side could change the answer.',
  },
  mostEdgeWidth: {
    value: 0.07,
    unit: "share of a panel's width",
    mark: 'C',
    reason: 'A sharp picture shows an edge in a few pixels; shaken or out of focus it spreads and mixes the panels.',
  },
  mostRatio: {
    value: 1.25,
    unit: 'light through this filter over light through a new one',
    mark: 'C',
    reason:
      'A used filter passes no more light than a new one: the sides are mistaken, or the new one is another kind.',
  },
}
