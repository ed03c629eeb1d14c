import { TickBox } from '@/app/homes/record/tick-form'
import { arrowInWords, mediumInWords, placeInWords, sizeInWords } from '@/lib/core/filter-words'
import type { Item } from '@/lib/core/plan-types'
import { subjectInWords } from '@/lib/core/subject-words'
import { taskInWords } from '@/lib/core/words'
import type { StoredHousehold } from '@/lib/data/households'
import { tickValue } from '@/lib/forms/ticked-form'

interface WalkUnitProps {
  home: StoredHousehold
  items: Item[]
  mayRecord: boolean
  first: boolean
}

/** One home of a walk: how to get in, and a box for each thing, with the filter to have in hand. */
export function WalkUnit({ home, items, mayRecord, first }: WalkUnitProps) {
  return (
    <section className="walk-unit" aria-labelledby={`home-${home.id}`}>
      <h2 id={`home-${home.id}`}>{home.name}</h2>
      {home.accessNote !== null && <p className="access-note">{home.accessNote}</p>}
      {items.map((item, index) => {
        const key = `${item.task} ${item.subject}`
        return mayRecord ? (
          <TickBox
            key={key}
            first={first && index === 0}
            ticked={false}
            what={`${home.name}: ${taskInWords(item.task)}, ${subjectInWords(home.household, item.subject)}`}
            value={tickValue({ householdId: home.id, task: item.task, subject: item.subject })}
          >
            <WalkItem home={home} item={item} />
          </TickBox>
        ) : (
          <p key={key} className="tick">
            <WalkItem home={home} item={item} />
          </p>
        )
      })}
    </section>
  )
}

function WalkItem({ home: { household, placeNotes }, item }: { home: StoredHousehold; item: Item }) {
  const filter = household.filters.find(({ id }) => id === item.subject)
  const isNew = item.basis === 'never-recorded'
  if (!filter) {
    return (
      <>
        <strong>{taskInWords(item.task)}</strong>, {subjectInWords(household, item.subject)}
      </>
    )
  }
  const arrow = arrowInWords(filter.place)
  return (
    <>
      <strong>{taskInWords(item.task)}</strong> {placeInWords(filter.place)}:{' '}
      <strong>{sizeInWords(filter.nominal)}</strong>, {mediumInWords(filter.medium, filter.merv)}
      {arrow && `; ${arrow}`}.{isNew && ' Look at it first: no change is recorded yet.'}
      {placeNotes[filter.id] !== undefined && <span className="hint">{placeNotes[filter.id]}</span>}
    </>
  )
}
