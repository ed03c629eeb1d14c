import type { NominalSize } from './household'

/** What a filter's outside may measure, in inches [C]: wider than anything a home system takes, so that only slips are refused. */
export const SIDE_RANGE_IN = { least: 4, most: 40 } as const
export const DEPTH_RANGE_IN = { least: 0.5, most: 6 } as const
export const LONGEST_SIDE_RATIO = 5

export const SIZE_FAULTS = [
  'not-a-number',
  'zero',
  'side-small',
  'side-large',
  'depth-small',
  'depth-large',
  'depth-not-last',
  'too-narrow',
] as const
export type SizeFaultCode = (typeof SIZE_FAULTS)[number]

export interface SizeFault {
  field: 'widthIn' | 'heightIn' | 'depthIn'
  code: SizeFaultCode
  say: string
}

const NAMES = { widthIn: 'The width', heightIn: 'The height', depthIn: 'The depth' } as const

/** Why this cannot be a filter, all reasons at once; empty if it can be one. Any numbers are taken, NaN too. */
export function faultsOf(size: NominalSize): SizeFault[] {
  const faults = [sideFault('widthIn', size.widthIn), sideFault('heightIn', size.heightIn), depthFault(size)].filter(
    (fault) => fault !== null,
  )
  if (faults.length > 0) return faults
  const [short, long] = [Math.min(size.widthIn, size.heightIn), Math.max(size.widthIn, size.heightIn)]
  if (long / short <= LONGEST_SIDE_RATIO) return []
  const field = size.widthIn === short ? 'widthIn' : 'heightIn'
  return [
    { field, code: 'too-narrow', say: 'One side is more than five times the other. No home filter is so narrow.' },
  ]
}

function sideFault(field: 'widthIn' | 'heightIn', inches: number): SizeFault | null {
  const name = NAMES[field]
  if (!Number.isFinite(inches)) return { field, code: 'not-a-number', say: `${name} is not a number.` }
  if (inches <= 0) return { field, code: 'zero', say: `${name} must be more than zero.` }
  const range = `Filters are ${SIDE_RANGE_IN.least} to ${SIDE_RANGE_IN.most} inches a side.`
  if (inches < SIDE_RANGE_IN.least)
    return { field, code: 'side-small', say: `${name} is too small for a filter. ${range}` }
  if (inches <= SIDE_RANGE_IN.most) return null
  const metric = inches >= 100 ? ' If you measured in millimeters, choose that.' : ''
  return { field, code: 'side-large', say: `${name} is too large for a filter. ${range}${metric}` }
}

function depthFault({ widthIn, heightIn, depthIn }: NominalSize): SizeFault | null {
  const field = 'depthIn'
  if (!Number.isFinite(depthIn)) return { field, code: 'not-a-number', say: 'The depth is not a number.' }
  if (depthIn <= 0) return { field, code: 'zero', say: 'The depth must be more than zero.' }
  if ([widthIn, heightIn].some((side) => side > 0 && depthIn > side)) {
    return {
      field,
      code: 'depth-not-last',
      say: 'The depth comes last: it is the thin side, the smallest of the three.',
    }
  }
  const range = `Filters are half an inch to ${DEPTH_RANGE_IN.most} inches deep.`
  if (depthIn < DEPTH_RANGE_IN.least) return { field, code: 'depth-small', say: `The depth is too small. ${range}` }
  if (depthIn > DEPTH_RANGE_IN.most) return { field, code: 'depth-large', say: `The depth is too large. ${range}` }
  return null
}
