import type { Hazard, InstructionClass } from './types'

const HOUSE_MUST_BE_LEFT: InstructionClass[] = [
  'thermostat-off',
  'thermostat-on',
  'breaker',
  'switch-on',
  'oil-button',
  'windows',
  'find-leak',
  'main-valve',
  'filter',
  'registers',
  'clear-space',
  'vent-clearing',
  'batteries',
  'fan-on',
  'emergency-heat',
  'space-heater',
  'warm-room',
  'keep-warm',
  'towel',
  'co-alarm-unit',
]

const STARTS: InstructionClass[] = [
  'thermostat-on',
  'breaker',
  'switch-on',
  'oil-button',
  'batteries',
  'emergency-heat',
]

const TOUCHES: InstructionClass[] = [...STARTS, 'filter', 'registers', 'clear-space', 'vent-clearing', 'fan-on']

/**
 * Which instruction must not be said while a hazard is answered yes or not sure. Own policy, the stricter of the
 * sources where they differ: nothing is done in a home that must be left, no start with any hazard open, and the
 * thermostat may be turned off only for a bang, an oil smell or steam-free faults, from a dry place.
 */
export const CONTRAINDICATED: Readonly<Record<Hazard, readonly InstructionClass[]>> = {
  gas: [...HOUSE_MUST_BE_LEFT, 'phone-here', 'car'],
  co: [...HOUSE_MUST_BE_LEFT, 'car'],
  fire: [...HOUSE_MUST_BE_LEFT, 'car'],
  flood: [...TOUCHES, 'thermostat-off', 'space-heater', 'warm-room', 'towel', 'car'],
  steam: [...TOUCHES, 'thermostat-off', 'space-heater', 'warm-room', 'towel', 'car'],
  people: [...TOUCHES, 'space-heater', 'car', 'windows'],
  shock: [...TOUCHES, 'thermostat-off', 'space-heater', 'towel', 'car'],
  water: [...TOUCHES, 'space-heater', 'towel', 'car'],
  boom: [...TOUCHES, 'car'],
  oil: [...TOUCHES, 'space-heater', 'car'],
}

/** DANGER: will hurt or kill. WARNING: could. The word stands first in the text of the outcome. */
export const SIGNALS: Readonly<Record<Hazard, 'DANGER' | 'WARNING'>> = {
  gas: 'DANGER',
  co: 'DANGER',
  fire: 'DANGER',
  flood: 'DANGER',
  steam: 'DANGER',
  people: 'WARNING',
  shock: 'DANGER',
  water: 'DANGER',
  boom: 'WARNING',
  oil: 'WARNING',
}
