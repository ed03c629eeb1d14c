/** What the figures of a column are. */
export const UNITS = ['s', 'min', 'h', 'pct', 'flag'] as const
export type Unit = (typeof UNITS)[number]

const SECONDS: Record<Unit, number> = { s: 1, min: 60, h: 3600, pct: 0.01, flag: 1 }
const ON = /^(on|true|yes|y|running|run|active|enabled|open|high|low|heat\w*|cool\w*|fan\w*)$/i
const OFF = /^(off|false|no|n|idle|none|inactive|disabled|closed|standby|stopped|auto|-+)$/i
const OWN_UNIT = /^(-?[\d.,]+)\s*(s|secs?|seconds?|m|mins?|minutes?|h|hrs?|hours?|%)\.?$/i
const CLOCK = /^(\d{1,4}):(\d{2})(?::(\d{2}))?$/

/**
 * A cell as seconds, or as a share of its time for `pct` and `flag`; NaN where it says nothing, undefined where it
 * cannot be read. A unit that stands in the cell goes before that of its column.
 */
export function readRun(text: string, unit: Unit): number | undefined {
  if (text === '') return Number.NaN
  const digit = text.length === 1 ? text.charCodeAt(0) - 48 : -1
  const plain = digit >= 0 && digit <= 9 ? digit : +text
  if (plain < 1e9 && plain > -1e9) {
    if (unit !== 'flag') return plain * SECONDS[unit]
    return plain === 0 ? 0 : plain > 0 ? 1 : undefined
  }
  return readOddly(text.trim(), unit)
}

function readOddly(text: string, unit: Unit): number | undefined {
  if (text === '' || /^(n\/?a|null|nan|unknown|\?+)$/i.test(text)) return Number.NaN
  if (unit === 'flag') return ON.test(text) ? 1 : OFF.test(text) ? 0 : undefined
  if (/^-+$/.test(text)) return Number.NaN
  const clock = CLOCK.exec(text)
  if (clock && unit !== 'pct') {
    const [first, second, third] = [Number(clock[1]), Number(clock[2]), clock[3]]
    // `1:30` in a column of hours is an hour and a half, in one of minutes or seconds a minute and a half.
    if (third !== undefined) return first * 3600 + second * 60 + Number(third)
    return unit === 'h' ? first * 3600 + second * 60 : first * 60 + second
  }
  const own = OWN_UNIT.exec(text)
  const number = decimal(own?.[1] ?? text)
  if (number === undefined) return undefined
  const sign = own?.[2]?.[0]?.toLowerCase()
  if (sign === undefined) return number * SECONDS[unit]
  // A share cannot become seconds here, nor seconds a share: how long the row lasts is not known yet.
  if ((sign === '%') !== (unit === 'pct')) return undefined
  return number * SECONDS[sign === '%' ? 'pct' : sign === 's' ? 's' : sign === 'm' ? 'min' : 'h']
}

/** `1,5` is 1.5; `1,200` in a table is as likely one and a fifth, and is read so: a run has few thousands. */
function decimal(text: string): number | undefined {
  const plain = text.replaceAll(/\s/g, '')
  if (/^-?\d{1,3}(,\d{3})+\.\d+$/.test(plain)) return Number(plain.replaceAll(',', ''))
  return /^-?\d+([.,]\d+)?$/.test(plain) ? Number(plain.replace(',', '.')) : undefined
}

/** What a word says the system was doing: bits of heating 1, cooling 2, fan alone 4; 0 is off, null unknown. */
export function wordMeans(word: string): number | null {
  const plain = word.toLowerCase().replaceAll(/[_-]/g, ' ').trim()
  if (/^(n\/?a|null|nan|unknown|offline|disconnected|error|no data)?$/.test(plain)) return null
  if (/\b(off|idle|none|standby|satisfied|waiting|wait|stopped|not running|inactive)\b/.test(plain)) return 0
  if (/^(0|false|no)$/.test(plain)) return 0
  const heats = /\bheat|heating\b|\bfurnace\b|\baux|\bemergency\b|\bburner\b|^hot$/.test(plain)
  const cools = /\bcool|\bac\b|\ba\/c\b|air condition|\bdehumid/.test(plain)
  const blows = /\bfan|\bblow|\bvent|\bcirculat/.test(plain)
  if (heats !== cools) return heats ? 1 : 2
  return blows && !heats ? 4 : null
}
