import { SelectField } from '@/app/parts/select-field'
import { TextField } from '@/app/parts/text-field'
import { DUST_EVENT_KINDS } from '@/lib/core/household'
import { eventKindInWords } from '@/lib/core/reading-words'
import { fieldOf, type GroupProps } from './group'

/** Times with more dust than usual, past or to come, a row each. */
export function EventFields({ rows, ...group }: GroupProps & { rows: number }) {
  return (
    <fieldset aria-describedby="events-hint">
      <legend>Times with more dust than usual</legend>
      <p className="hint" id="events-hint">
        Building work counts three times, wildfire smoke twice, dust or pollen season a third more. They may lie ahead:
        planned work moves the filter’s day as soon as it stands here.
      </p>
      {Array.from({ length: rows }, (_, row) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the rows are fields by number, and never move
        <div className="inline alarm" key={row}>
          <SelectField id={`event-${row}`} label={`Time ${row + 1}`} {...fieldOf(group, `event-${row}`)}>
            <option value="none">none</option>
            {DUST_EVENT_KINDS.map((kind) => (
              <option key={kind} value={kind}>
                {eventKindInWords(kind)}
              </option>
            ))}
          </SelectField>
          <TextField id={`event-${row}-from`} label="from" type="date" {...fieldOf(group, `event-${row}-from`)} />
          <TextField id={`event-${row}-to`} label="to" type="date" {...fieldOf(group, `event-${row}-to`)} />
        </div>
      ))}
      <button type="submit" name="button" value="more">
        Room for more
      </button>
    </fieldset>
  )
}
