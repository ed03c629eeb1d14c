import { sizeInWords } from '@/lib/core/filter-words'
import {
  type Assumed,
  type Delivery,
  FILTER_PLACES,
  type Filter,
  type FilterPlace,
  MEDIA,
  type NominalSize,
} from '@/lib/core/household'
import { nominalFromMeasured, nominalFromPrinted } from '@/lib/core/nominal-size'
import { LIMITS } from '../equipment-schema'
import { inchesFrom, typedNumber } from '../quantities'
import { Answers, known, one, type Read, type Typed } from './answers'

export interface FilterRead {
  /** Null: there is no filter at all. */
  filter: Omit<Filter, 'id' | 'system'> | null
  assumed: Assumed['code'][]
  /** What was typed, where the size was measured: to be shown beside the nominal one. */
  measured: NominalSize | null
}

const SIDES = ['width', 'height', 'depth'] as const
const KEYS = { width: 'widthIn', height: 'heightIn', depth: 'depthIn' } as const

// What is reckoned with until somebody looks: one of the most common sizes [P].
const USUAL_SIZE: NominalSize = { widthIn: 16, heightIn: 25, depthIn: 1 }
// A screen has no loading model, so its size changes nothing; the file wants one.
const SCREEN_SIZE: NominalSize = { widthIn: 12, heightIn: 9, depthIn: 0.5 }

/** The places where a system that brings its air this way can have a filter. */
export function placesFor(delivery: Delivery): FilterPlace[] {
  if (delivery === 'ducted') return FILTER_PLACES.filter((place) => place !== 'ductless-head')
  if (delivery === 'ductless') return ['ductless-head', 'in-cabinet', 'media-cabinet', 'ventilator']
  return delivery === 'room' ? ['in-cabinet'] : []
}

/** One filter of a system: where it sits, how large it is, what it is made of. */
export function readFilter(
  typed: Typed,
  { delivery, common }: { delivery: Delivery; common: readonly NominalSize[] },
): Read<FilterRead> {
  const answers = new Answers(typed)
  const places = placesFor(delivery)
  const text = answers.text('place')
  if (text === 'none') return { ok: true, value: { filter: null, assumed: [], measured: null } }
  const assumed: Assumed['code'][] = []
  let place = places.find((one) => one === text)
  if (text === 'unknown' && places[0]) {
    assumed.push('filter-place')
    place = delivery === 'ducted' ? 'furnace-slot' : places[0]
  }
  if (!place) answers.fault('place', 'Choose where the filter sits; “I don’t know” and “there is none” are answers.')
  const labelLimitDays = readLimit(answers)
  if (place === 'ductless-head' || place === 'ventilator') {
    const nominal = typedSides(answers, false) ?? SCREEN_SIZE
    return answers.result(() => ({
      filter: {
        place: known(place),
        nominal,
        medium: 'screen',
        ...(labelLimitDays !== undefined && { labelLimitDays }),
      },
      assumed,
      measured: null,
    }))
  }
  const size = readSize(answers, common)
  if (size === 'unknown') assumed.push('filter-size')
  const kind = answers.text('medium')
  const medium = kind === '' || kind === 'unknown' ? 'pleated' : MEDIA.find((word) => word === kind)
  if (kind === '' || kind === 'unknown') assumed.push('filter-medium')
  if (!medium) answers.fault('medium', 'Choose what it is made of; “I don’t know” is an answer.')
  const merv = answers.quantity('merv', LIMITS.merv)
  return answers.result(() => ({
    filter: {
      place: known(place),
      nominal: size === 'unknown' ? USUAL_SIZE : known(size).nominal,
      medium: known(medium),
      ...(merv !== undefined && { merv }),
      ...(labelLimitDays !== undefined && { labelLimitDays }),
    },
    assumed,
    measured: size === 'unknown' ? null : known(size).measured,
  }))
}

function readLimit(answers: Answers): number | undefined {
  const isMonths = answers.text('limit-unit') === 'months'
  const limit = answers.quantity('limit', isMonths ? { min: 1, max: 24, unit: 'months' } : LIMITS.labelLimitDays)
  // Three months on a frame are its ninety days.
  return limit === undefined || !isMonths ? limit : Math.round(limit * 30)
}

function readSize(
  answers: Answers,
  common: readonly NominalSize[],
): { nominal: NominalSize; measured: NominalSize | null } | 'unknown' | undefined {
  const isEmpty = SIDES.every((side) => answers.text(side) === '')
  const way = answers.text('size-way') || (isEmpty ? 'unknown' : 'printed')
  if (way === 'unknown') return 'unknown'
  const sides = typedSides(answers, true)
  if (!sides) return undefined
  const answer = way === 'measured' ? nominalFromMeasured(sides, common) : nominalFromPrinted(sides, common)
  if (answer.kind === 'nominal') return { nominal: answer.nominal, measured: way === 'measured' ? sides : null }
  for (const { field, say } of answer.faults) {
    answers.fault(sideOf(field), say)
  }
  return undefined
}

function typedSides(answers: Answers, wanted: boolean): NominalSize | undefined {
  const unit = answers.text('size-unit') === 'cm' ? 'cm' : 'in'
  const read = SIDES.map((side) => {
    const text = answers.text(side)
    const value = typedNumber(text)
    if (value !== undefined) return inchesFrom(value, unit)
    if (text !== '')
      return answers.fault(
        side,
        `Write the ${side === 'depth' ? 'thickness' : side} as a number such as 16, 15½ or 15 1/2.`,
      )
    return wanted
      ? answers.fault(side, `Write the ${side === 'depth' ? 'thickness' : side}, or choose “I don’t know the size”.`)
      : undefined
  })
  const [widthIn, heightIn, depthIn] = read
  if (widthIn === undefined || heightIn === undefined || depthIn === undefined) return undefined
  return { widthIn, heightIn, depthIn }
}

/** What the size helper says to what stands in the three fields: the name of the size first, then what is odd about it. */
export function sizeSaid(typed: Typed, common: readonly NominalSize[]): Read<string[]> {
  const answers = new Answers(typed)
  const sides = typedSides(answers, true)
  if (!sides) return { ok: false, faults: answers.faults }
  const answer =
    answers.text('size-way') === 'measured' ? nominalFromMeasured(sides, common) : nominalFromPrinted(sides, common)
  if (answer.kind === 'nominal')
    return { ok: true, value: [sizeInWords(answer.nominal), ...answer.notes.map(({ say }) => say)] }
  return { ok: false, faults: answer.faults.map(({ field, say }) => ({ path: sideOf(field), say })) }
}

function sideOf(field: string): string {
  return SIDES.find((side) => KEYS[side] === field) ?? 'width'
}

/** The fields as a filter fills them. */
export function filterTyped(filter: Filter, assumed: readonly Assumed[] = []): Typed {
  const isAssumed = (code: Assumed['code']) => assumed.some((a) => a.code === code && a.subject === filter.id)
  const { widthIn, heightIn, depthIn } = filter.nominal
  return {
    place: [isAssumed('filter-place') ? 'unknown' : filter.place],
    'size-way': [isAssumed('filter-size') ? 'unknown' : 'printed'],
    ...(!isAssumed('filter-size') && {
      width: [String(widthIn)],
      height: [String(heightIn)],
      depth: [String(depthIn)],
    }),
    medium: [isAssumed('filter-medium') ? 'unknown' : filter.medium],
    merv: one(filter.merv),
    limit: one(filter.labelLimitDays),
  }
}
