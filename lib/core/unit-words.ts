import type { Household } from './household'

/** How figures are shown; calculations never see it. */
export type Units = Household['units']

const M3_PER_FT3 = 0.0283168
const M_PER_FT = 0.3048
/** Cubic metres an hour in one cubic foot a minute. */
export const M3H_PER_CFM = M3_PER_FT3 * 60
const PA_PER_IN_WG = 249.089
/** By definition (NIST Special Publication 811, appendix B). */
export const JOULES_PER_BTU = 1055.05585262

/** Rounded with a thousands comma: `1,080`, `0.25`; a true minus sign. */
export function numberInWords(value: number, decimals = 0): string {
  const fixed = Math.abs(value).toFixed(decimals)
  const [whole = '0', fraction] = fixed.split('.')
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',')
  const sign = value < 0 && Number(fixed) !== 0 ? '−' : ''
  return `${sign}${grouped}${fraction ? `.${fraction}` : ''}`
}

/** Three figures at most: `1,080`, `36.4`, `0.15`. */
export function roughly(value: number): string {
  const size = Math.abs(value)
  return numberInWords(value, size >= 100 ? 0 : size >= 10 ? 1 : 2)
}

/** From °F: `70 °F`, `21 °C`. */
export function temperatureInWords(fahrenheit: number, units: Units): string {
  if (units === 'us') return `${numberInWords(fahrenheit)} °F`
  return `${numberInWords(((fahrenheit - 32) * 5) / 9)} °C`
}

/** From cfm: `1,080 cfm`, `1,835 m³/h`. */
export function airflowInWords(cfm: number, units: Units): string {
  if (units === 'us') return `${numberInWords(cfm)} cfm`
  return `${numberInWords(cfm * M3H_PER_CFM)} m³/h`
}

/** The same for whoever meets it the first time: `1,080 cubic feet of air a minute (cfm)`. */
export function airflowInFull(cfm: number, units: Units): string {
  if (units === 'us') return `${numberInWords(cfm)} cubic feet of air a minute (cfm)`
  return `${numberInWords(cfm * M3H_PER_CFM)} cubic metres of air an hour (m³/h)`
}

/** From ft/min: `432 feet a minute`, `2.2 metres a second`. */
export function velocityInWords(fpm: number, units: Units): string {
  if (units === 'us') return `${numberInWords(fpm)} feet a minute`
  return `${numberInWords((fpm * M_PER_FT) / 60, 1)} metres a second`
}

/** From inches of water: `0.15 inches of water`, `37 pascals`. */
export function pressureInWords(inWg: number, units: Units): string {
  if (units === 'us') return `${numberInWords(inWg, 2)} inches of water`
  return `${numberInWords(inWg * PA_PER_IN_WG)} pascals`
}

/** From square inches: `2.8 square feet`, `0.26 square metres`. */
export function areaInWords(squareInches: number, units: Units): string {
  if (units === 'us') return `${numberInWords(squareInches / 144, 1)} square feet`
  return `${numberInWords((squareInches / 144) * M_PER_FT ** 2, 2)} square metres`
}

/** From feet: `600 feet`, `183 metres`. */
export function heightInWords(feet: number, units: Units): string {
  return units === 'us' ? `${numberInWords(feet)} feet` : `${numberInWords(feet * M_PER_FT)} metres`
}

/** `1 hour`, `300 hours`, `7.5 hours`: a fraction only below ten. */
export function hoursInWords(hours: number): string {
  const shown =
    hours < 10
      ? numberInWords(Math.round(hours * 2) / 2, Number.isInteger(Math.round(hours * 2) / 2) ? 0 : 1)
      : numberInWords(hours)
  return `${shown} ${shown === '1' ? 'hour' : 'hours'}`
}

/** A fraction as `62 %`, the sign never on a line of its own. */
export function percentInWords(fraction: number): string {
  return `${numberInWords(fraction * 100)}\u00a0%`
}
