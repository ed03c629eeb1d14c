import { ChoiceRows } from '@/app/parts/choice-rows'
import { SelectField } from '@/app/parts/select-field'
import { TextField } from '@/app/parts/text-field'
import type { FilterPlace } from '@/lib/core/household'
import { choiceOf, fieldOf, type GroupProps } from './group'
import { MediumDrawing } from './medium-drawing'
import { WhenFields } from './when-fields'

const PLACES: Record<FilterPlace, { label: string; hint?: string }> = {
  'ceiling-grille': { label: 'Behind a large grille in the ceiling' },
  'wall-grille': { label: 'Behind a large grille in a wall' },
  'floor-grille': { label: 'Under a grille in the floor' },
  'furnace-slot': {
    label: 'In a slot beside the furnace or air handler',
    hint: 'Often with a small cover that lifts off by hand.',
  },
  'in-cabinet': {
    label: 'Inside the unit, behind its own front',
    hint: 'If its cover needs a tool, leave it to a technician.',
  },
  'media-cabinet': { label: 'In a box of its own beside the unit', hint: 'A thick filter of 4 or 5 inches.' },
  'ductless-head': { label: 'Behind the front flap of the wall unit', hint: 'Mesh screens that are washed.' },
  ventilator: { label: 'In the fresh-air ventilator' },
}

const MEDIA = [
  {
    value: 'fiberglass',
    label: 'Fiberglass',
    hint: 'Thin, blue or green, you can see through it. It protects the unit and little else; a month is its time.',
  },
  {
    value: 'pleated',
    label: 'Pleated',
    hint: 'Paper or cloth in folds, 1 or 2 inches deep. The usual one; holds more and catches finer dust.',
  },
  {
    value: 'media',
    label: 'Deep pleated media',
    hint: '4 or 5 inches deep. Holds so much that it stays half a year or longer.',
  },
  { value: 'washable', label: 'Washable', hint: 'A stiff mesh or foam that is rinsed and put back.' },
] as const

interface FilterFieldsProps extends GroupProps {
  places: FilterPlace[]
  systems?: { id: string; name: string }[]
  /** The size helper’s answer: the name of the size, then what is odd about it. */
  sizeSaid?: string[]
  withChanged?: boolean
}

/** One filter: where it sits, how large, of what, and when it was last changed. */
export function FilterFields({ places, systems = [], sizeSaid = [], withChanged, ...group }: FilterFieldsProps) {
  return (
    <>
      {systems.length > 1 && (
        <SelectField id="system" label="Which system is it of?" {...fieldOf(group, 'system')}>
          {systems.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </SelectField>
      )}
      <ChoiceRows
        name="place"
        legend="Where does the filter sit?"
        hint="Look for the large grille that draws air in; a sheet of paper sticks to it while the fan runs."
        choices={[
          ...places.map((place) => ({ value: place, ...PLACES[place] })),
          {
            value: 'unknown',
            label: 'I don’t know',
            hint: 'One is reckoned with until you have found it; Find shows where to look.',
          },
          { value: 'none', label: 'There is no filter at all' },
        ]}
        {...choiceOf(group, 'place')}
      />
      <div className="ask-filter">
        {withChanged && (
          <WhenFields
            {...group}
            name="changed"
            legend="When was it last changed or washed?"
            hint="About will do. Leave both empty if you don’t know: then it is looked at first."
            unit="weeks"
          />
        )}
        <div className="ask-panel">
          <ChoiceRows
            name="size-way"
            legend="How large is it?"
            hint="A filter that doesn’t fit lets dust past. The three numbers are printed on the edge of its frame."
            choices={[
              { value: 'printed', label: 'I read them on the frame' },
              {
                value: 'measured',
                label: 'I measured the filter',
                hint: 'The name is then worked out: 15½ × 24½ × ¾ is sold as 16 × 25 × 1.',
              },
              {
                value: 'unknown',
                label: 'I don’t know the size',
                hint: '16 × 25 × 1 is reckoned with until you have looked, and the plan says so.',
              },
            ]}
            {...choiceOf(group, 'size-way')}
          />
          <div className="inline sizes">
            <TextField id="width" label="Width" className="short" placeholder="16" {...fieldOf(group, 'width')} />
            <TextField id="height" label="Height" className="short" placeholder="25" {...fieldOf(group, 'height')} />
            <TextField id="depth" label="Thickness" className="short" placeholder="1" {...fieldOf(group, 'depth')} />
            <SelectField id="size-unit" label="in" defaultValue={group.typed['size-unit']?.[0] ?? 'in'}>
              <option value="in">inches</option>
              <option value="cm">centimetres</option>
            </SelectField>
            <button type="submit" name="button" value="size">
              Work out the size
            </button>
          </div>
          {sizeSaid.length > 0 && (
            <div className="notice" role="status">
              <p>
                <strong>{sizeSaid[0]}</strong> is its name in a shop.
              </p>
              {sizeSaid.slice(1).map((note) => (
                <p key={note}>{note}</p>
              ))}
            </div>
          )}
          <ChoiceRows
            name="medium"
            legend="What is it made of?"
            hint="It decides how much dust it holds, and so how long it lasts."
            choices={[
              ...MEDIA.map((medium) => ({ ...medium, drawing: <MediumDrawing medium={medium.value} /> })),
              { value: 'unknown', label: 'I don’t know', hint: 'Pleated is reckoned with, and the plan says so.' },
            ]}
            {...choiceOf(group, 'medium')}
          />
          <TextField
            id="merv"
            label="MERV rating"
            hint="Printed on most frames: the higher, the finer the dust it catches, and the harder the fan must pull. 8 is usual, 13 stops most smoke. Empty if you don’t know: 8 is reckoned with."
            className="short"
            inputMode="numeric"
            {...fieldOf(group, 'merv')}
          />
        </div>
        <div className="inline">
          <TextField
            id="limit"
            label="Time limit printed on it, if any"
            hint="“Up to 90 days”, “3 months”. Empty: what is usual for its kind."
            className="short"
            inputMode="numeric"
            {...fieldOf(group, 'limit')}
          />
          <SelectField id="limit-unit" label="counted in" defaultValue={group.typed['limit-unit']?.[0] ?? 'days'}>
            <option value="days">days</option>
            <option value="months">months</option>
          </SelectField>
        </div>
      </div>
    </>
  )
}
