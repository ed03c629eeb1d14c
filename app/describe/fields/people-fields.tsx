import { ChoiceRows } from '@/app/parts/choice-rows'
import { TextField } from '@/app/parts/text-field'
import { choiceOf, fieldOf, type GroupProps } from './group'

/** Who lives there, and what makes dust. */
export function PeopleFields({ withOwnFactor, ...group }: GroupProps & { withOwnFactor?: boolean }) {
  return (
    <>
      <TextField
        id="people"
        label="How many people live there?"
        hint="Everyone who walks about stirs up dust. About how many is enough."
        className="short"
        inputMode="numeric"
        {...fieldOf(group, 'people')}
      />
      <TextField
        id="pets"
        label="How many pets with fur?"
        hint="Hair fills a filter sooner. Fish and birds don’t count; none is 0."
        className="short"
        inputMode="numeric"
        {...fieldOf(group, 'pets')}
      />
      {withOwnFactor && (
        <TextField
          id="pet-factor"
          label="Your own figure for the pets’ dust"
          hint="1.5 is half as much again as without pets. Empty: the table’s figure."
          className="short"
          inputMode="decimal"
          {...fieldOf(group, 'pet-factor')}
        />
      )}
      <ChoiceRows
        name="smoking"
        legend="More dust?"
        hint="Tick what is so."
        several
        choices={[{ value: 'yes', label: 'Somebody smokes indoors' }]}
        {...choiceOf(group, 'smoking')}
      />
      <ChoiceRows
        name="carpet"
        legend="Floors"
        several
        choices={[{ value: 'yes', label: 'Mostly carpet' }]}
        {...choiceOf(group, 'carpet')}
      />
      <ChoiceRows
        name="hard-water"
        legend="Is the tap water hard?"
        hint="White crust on the kettle is hard water. It matters for a humidifier’s pad."
        choices={[
          { value: 'yes', label: 'Yes' },
          { value: 'no', label: 'No' },
          { value: 'unknown', label: 'I don’t know', hint: 'Hard is reckoned with, and the plan says so.' },
        ]}
        {...choiceOf(group, 'hard-water')}
      />
      <ChoiceRows
        name="vulnerable"
        legend="Could cold or heat harm someone there sooner than others?"
        hint="A baby, anyone of 65 or over, pregnant, ill, disabled, or on a medical device. With no heat they need help within hours, so the guide tells them to call sooner. No more than yes or no is kept."
        choices={[
          { value: 'yes', label: 'Yes' },
          { value: 'no', label: 'No' },
          {
            value: 'unknown',
            label: 'I’d rather not say',
            hint: 'Yes is reckoned with: it only makes the guide more careful.',
          },
        ]}
        {...choiceOf(group, 'vulnerable')}
      />
    </>
  )
}
