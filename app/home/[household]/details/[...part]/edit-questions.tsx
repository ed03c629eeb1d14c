import { DeviceFields } from '@/app/describe/fields/device-fields'
import { FilterFields } from '@/app/describe/fields/filter-fields'
import type { GroupProps } from '@/app/describe/fields/group'
import { PeopleFields } from '@/app/describe/fields/people-fields'
import { PlaceFields } from '@/app/describe/fields/place-fields'
import { SystemFields } from '@/app/describe/fields/system-fields'
import type { Edited } from '../actions'
import type { EditScreen } from './edit-screen'

interface EditQuestionsProps {
  screen: EditScreen
  group: GroupProps
  done: Edited | null
}

/** The same questions as when it was described, with what stands in them. */
export function EditQuestions({ screen, group, done }: EditQuestionsProps) {
  const more = done?.kind === 'more' ? 2 : 0
  switch (screen.kind) {
    case 'climate':
      return <PlaceFields {...group} climates={screen.climates} keepable={screen.keepable} />
    case 'people':
      return <PeopleFields {...group} withOwnFactor />
    case 'systems':
      return <SystemFields {...group} units={screen.units} />
    case 'filters':
      return <FilterFields {...group} places={screen.places} systems={screen.systems} sizeSaid={done?.said ?? []} />
    case 'devices':
      return <DeviceFields {...group} tickable={screen.tickable} rows={rowsOf(group, screen) + more} />
  }
}

/** As many rows of alarms as were shown when they were typed. */
function rowsOf({ typed }: GroupProps, screen: { rows: number; mostRows: number }): number {
  let { rows } = screen
  while (rows < screen.mostRows && typed[`alarm-${rows}`] !== undefined) rows++
  return rows
}
