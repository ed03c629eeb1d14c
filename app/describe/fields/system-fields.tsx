import { ChoiceRows } from '@/app/parts/choice-rows'
import { TextField } from '@/app/parts/text-field'
import type { Units } from '@/lib/core/unit-words'
import { choiceOf, fieldOf, type GroupProps } from './group'
import { WhenFields } from './when-fields'

const HOW = [
  {
    value: 'ducts',
    label: 'Warm air blows from grilles',
    hint: 'One unit, ducts to the rooms: a furnace or a heat pump.',
  },
  {
    value: 'radiators',
    label: 'Hot water: radiators, baseboards with pipes, or a warm floor',
    hint: 'A boiler, or a heat pump that heats water.',
  },
  { value: 'heads', label: 'Units high on the wall that blow', hint: 'Ductless heads, with a unit outside.' },
  { value: 'room', label: 'A heater that stands or hangs in the room', hint: 'A wall heater, or electric baseboards.' },
  {
    value: 'building-air',
    label: 'The building supplies it, as air',
    hint: 'A grille or a cabinet with a fan in the flat; the heat comes from below.',
  },
  { value: 'building-radiators', label: 'The building supplies it, by radiators' },
  { value: 'boiler-ducts', label: 'A boiler, with a fan that blows warm air into ducts' },
  { value: 'none', label: 'It only cools' },
  { value: 'unknown', label: 'I don’t know', hint: 'Air from ducts is reckoned with, and the plan says so.' },
]

const FUELS = [
  { value: 'gas', label: 'Natural gas' },
  { value: 'pump', label: 'A heat pump', hint: 'A unit outside that runs in winter too.' },
  { value: 'electric', label: 'Electricity, without a heat pump' },
  { value: 'propane', label: 'Propane, from a tank' },
  { value: 'oil', label: 'Heating oil' },
  { value: 'dual', label: 'A heat pump with a furnace beside it' },
  {
    value: 'unknown',
    label: 'I don’t know',
    hint: 'Gas is reckoned with, so that its yearly service is not left out.',
  },
]

const COOL = [
  { value: 'central', label: 'Central cooling, through the same grilles' },
  { value: 'pump', label: 'The heat pump, or the units on the wall' },
  { value: 'window', label: 'Window units' },
  { value: 'none', label: 'Nothing' },
  { value: 'unknown', label: 'I don’t know' },
]

interface SystemFieldsProps extends GroupProps {
  units: Units
  /** While it is first described, its last services are asked too; later they stand in the log. */
  withServices?: boolean
}

/** One system: what heats, what cools, how the air comes; ratings for whoever has them at hand. */
export function SystemFields({ units, withServices, ...group }: SystemFieldsProps) {
  const degrees = units === 'us' ? '°F' : '°C'
  const airflow = units === 'us' ? 'cubic feet a minute (cfm)' : 'cubic metres an hour (m³/h)'
  const hasFault = (fields: string[]) => group.faults.some(({ path }) => fields.includes(path))
  const text = (id: string, label: string, hint?: string, inputMode: 'decimal' | 'text' = 'decimal') => (
    <TextField
      id={id}
      label={label}
      {...(hint && { hint })}
      className="short"
      inputMode={inputMode}
      {...fieldOf(group, id)}
    />
  )
  // A plate in a metric home may say kilowatts, which no keyboard of numbers can write.
  const power = (id: string, label: string, hint: Record<Units, string | undefined>) =>
    text(id, label, hint[units], units === 'us' ? 'decimal' : 'text')
  return (
    <>
      <ChoiceRows
        name="how"
        legend="How does the heat reach the rooms?"
        hint="It decides whether there is a filter, and where."
        choices={HOW}
        {...choiceOf(group, 'how')}
      />
      <div className="ask-fuel">
        <ChoiceRows
          name="fuel"
          legend="What makes the heat?"
          hint="Each needs its own yearly service. Where the building supplies it, or there is none, leave this."
          choices={FUELS}
          {...choiceOf(group, 'fuel')}
        />
      </div>
      <ChoiceRows
        name="cool"
        legend="And what cools?"
        hint="Cooling runs the same fan through the same filter, and makes water that must drain."
        choices={COOL}
        {...choiceOf(group, 'cool')}
      />
      {withServices && (
        <>
          <div className="ask-heat-service">
            <WhenFields
              {...group}
              name="heat-service"
              legend="When did a technician last service the heating?"
              hint="A sticker on the unit often says. Leave both empty if you don’t know, or if it never was: it is then due before its next season."
              unit="months"
            />
          </div>
          <div className="ask-cool-service">
            <WhenFields
              {...group}
              name="cool-service"
              legend="And the cooling?"
              hint="Empty if you don’t know, or if there is none."
              unit="months"
            />
          </div>
        </>
      )}
      <details open={hasFault(['fan', 'minutes', 'heat-set', 'cool-set'])}>
        <summary>Thermostat and fan, if you know</summary>
        {text(
          'heat-set',
          `Heating set to, ${degrees}`,
          `Empty: ${units === 'us' ? '70 °F' : '21 °C'} is reckoned with, and the plan says so.`,
        )}
        {text(
          'cool-set',
          `Cooling set to, ${degrees}`,
          `Empty: ${units === 'us' ? '75 °F' : '24 °C'} is reckoned with.`,
        )}
        <ChoiceRows
          name="fan"
          legend="The fan switch at the thermostat"
          hint="A fan that always runs passes three to five times the air through the filter."
          choices={[
            { value: 'auto', label: 'Auto: it runs with the heating or cooling' },
            { value: 'on', label: 'On: it always runs' },
            { value: 'circulate', label: 'Circulate: some minutes of every hour' },
            { value: 'unknown', label: 'I don’t know', hint: 'Auto is reckoned with, and the plan says so.' },
          ]}
          {...choiceOf(group, 'fan')}
        />
        {text('minutes', 'Minutes of every hour, if it circulates')}
      </details>
      <details
        open={hasFault([
          'input',
          'output',
          'efficiency',
          'rise',
          'tons',
          'heat-year',
          'cool-year',
          'airflow-heat',
          'airflow-cool',
          'name',
        ])}
      >
        <summary>Name and ratings, if you have them at hand</summary>
        <TextField
          id="name"
          label="What do you call this system?"
          hint="“Upstairs”, “Furnace in the basement”. Empty: named after what it is."
          {...fieldOf(group, 'name')}
        />
        <p className="hint">
          The rating plate is on the outside of the unit or in its papers. Open no cover to read it: leave these empty
          if you can’t see it, and the plan says what it assumed.
        </p>
        {power('input', 'Heating input, Btu/h', { us: 'Such as 80,000.', metric: 'Such as 80,000, or 23 kW.' })}
        {power('output', 'Heating output, Btu/h', { us: undefined, metric: 'Or in kilowatts, such as 21 kW.' })}
        {text('efficiency', 'Efficiency, percent', 'AFUE on the yellow label, such as 92. Not for a heat pump.')}
        {text('rise', `Temperature rise, ${degrees}`, 'The middle of the range on the plate.')}
        {text('heat-year', 'Year the heating was installed')}
        {power('tons', 'Cooling, tons', {
          us: '12,000 Btu/h are one ton.',
          metric: 'Or in kilowatts, such as 10.5 kW.',
        })}
        {text('cool-year', 'Year the cooling was installed')}
        {text('airflow-heat', `Airflow in heating as a technician measured it, ${airflow}`)}
        {text('airflow-cool', `Airflow in cooling as a technician measured it, ${airflow}`)}
      </details>
    </>
  )
}
