import { SelectField } from '@/app/parts/select-field'
import { fieldOf, type GroupProps } from './group'

/** Which of a home's systems something is about. */
export function SystemField({ group, systems }: { group: GroupProps; systems: { id: string; name: string }[] }) {
  return (
    <SelectField id="system" label="Which system?" {...fieldOf(group, 'system')}>
      {systems.map(({ id, name }) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </SelectField>
  )
}
