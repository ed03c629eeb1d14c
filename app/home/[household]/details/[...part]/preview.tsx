import { PlanChangeList } from '@/app/parts/plan-change-list'
import type { Edited } from '../actions'

/** What a change does to the dates, carrying what was typed until it is saved. */
export function Preview({ edited, removal }: { edited: Edited; removal: string | null }) {
  const { kind, typed, remove, changes } = edited
  return (
    <>
      {kind === 'conflict' && (
        <div className="notice" role="alert">
          <p>
            <strong>Somebody else changed this home meanwhile, so nothing was saved yet.</strong> What you typed is
            still here. Below is what it does to the home as it stands now; save to put yours into it.
          </p>
        </div>
      )}
      {remove && <p>Taking it out. {removal}</p>}
      <h2>{changes.length === 0 ? 'No date moves' : 'What it does to the dates'}</h2>
      {changes.length === 0 && <p>Everything stays due when it was.</p>}
      <PlanChangeList changes={changes} />
      {Object.entries(typed).flatMap(([name, values]) =>
        // biome-ignore lint/suspicious/noArrayIndexKey: the texts of one field, in their order
        values.map((value, index) => <input key={`${name} ${index}`} type="hidden" name={name} value={value} />),
      )}
      {remove && <input type="hidden" name="remove" value="yes" />}
    </>
  )
}
