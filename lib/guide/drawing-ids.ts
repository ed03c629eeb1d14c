/** The drawings that a screen may ask for; `app/parts/drawings/drawing.tsx` draws each of them. */
export const DRAWING_IDS = [
  'ducted-home',
  'return-grille',
  'supply-register',
  'arrow-ceiling',
  'arrow-wall',
  'arrow-floor',
  'arrow-slot',
  'arrow-cabinet',
  'arrow-media',
  'ductless-head',
  'ventilator',
  'no-filter',
  'window-unit',
  'printed-size',
  'three-sides',
  'light-clear',
  'light-half',
  'light-dark',
  'stool-yes',
  'ladder-no',
] as const
export type DrawingId = (typeof DRAWING_IDS)[number]
