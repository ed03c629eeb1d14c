import { ChoiceRows } from '@/app/parts/choice-rows'
import { SelectField } from '@/app/parts/select-field'
import { TextField } from '@/app/parts/text-field'
import type { DeviceKind } from '@/lib/core/household'
import { fieldOf, type GroupProps } from './group'

const HINTS: Partial<Record<DeviceKind, string>> = {
  humidifier: 'A box on the duct with a pad that scales up.',
  dehumidifier: 'Its drain is looked at in the cooling season.',
  erv: 'Brings fresh air and keeps heat and moisture; marked ERV.',
  hrv: 'Brings fresh air and keeps heat; marked HRV.',
  'water-heater-gas': 'A yearly look from outside; its flue is the technician’s.',
  'water-heater-electric': 'A yearly look from outside.',
  'condensate-drain':
    'A thin pipe that carries the cooling’s water away. Where there is central cooling, there is one.',
}

interface DeviceFieldsProps extends GroupProps {
  tickable: { value: string; kind: DeviceKind; label: string }[]
  rows: number
}

/** Alarms with their dates, and whatever else is there. */
export function DeviceFields({ tickable, rows, ...group }: DeviceFieldsProps) {
  return (
    <>
      <fieldset aria-describedby="alarms-hint">
        <legend>Smoke and carbon monoxide alarms</legend>
        <p className="hint" id="alarms-hint">
          Each has a date on its back: a smoke alarm wears out ten years after it was made, a carbon monoxide alarm on
          the day printed on it. Take the date as near as it says, the first of the month where no day is printed; leave
          it empty until you have looked.
        </p>
        {Array.from({ length: rows }, (_, row) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the rows are fields by number, and never move
          <div className="inline entry" key={row}>
            <input type="hidden" name={`alarm-${row}-id`} value={group.typed[`alarm-${row}-id`]?.[0] ?? ''} />
            <SelectField id={`alarm-${row}`} label={`Alarm ${row + 1}`} {...fieldOf(group, `alarm-${row}`)}>
              <option value="none">none</option>
              <option value="smoke-alarm">smoke alarm</option>
              <option value="co-alarm">carbon monoxide alarm</option>
            </SelectField>
            <TextField id={`alarm-${row}-made`} label="made on" type="date" {...fieldOf(group, `alarm-${row}-made`)} />
            <TextField id={`alarm-${row}-end`} label="replace by" type="date" {...fieldOf(group, `alarm-${row}-end`)} />
          </div>
        ))}
        <button type="submit" name="button" value="more">
          Room for more alarms
        </button>
      </fieldset>
      <ChoiceRows
        name="device"
        legend="What else is there?"
        hint="Each brings its own small task. Tick only what you know of; you can add more later."
        several
        choices={tickable.map(({ value, kind, label }) => ({
          value,
          label,
          ...(HINTS[kind] && { hint: HINTS[kind] }),
        }))}
        chosen={group.typed.device ?? []}
      />
    </>
  )
}
