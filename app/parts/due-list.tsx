import type { ReactNode } from 'react'
import type { Day } from '@/lib/core/day'
import type { Household } from '@/lib/core/household'
import type { LookWorth } from '@/lib/core/look-worth'
import { type Item, STATES, type Warning } from '@/lib/core/plan-types'
import { stateInWords } from '@/lib/core/words'
import { DueItem } from './due-item'
import { StateSign } from './state-sign'

interface DueListProps {
  household: Household
  items: Item[]
  on: Day
  /** Buttons and forms of an item: what can be recorded, put off, undone. */
  actions?: (item: Item) => ReactNode
  /** Where the workings of a filter's day are shown; null where there are none. */
  whyHref?: (item: Item) => string | null
  warnings?: Warning[]
  /** What a look would teach, today or on the look day to come, by the filter's id. */
  looks?: ReadonlyMap<string, LookWorth>
}

/** What is due, overdue first, then by day, in a section for each state. */
export function DueList({ household, items, on, actions, whyHref, warnings = [], looks }: DueListProps) {
  const byDay = [...items].sort((a, b) => (a.due < b.due ? -1 : a.due > b.due ? 1 : 0))
  return (
    <div className="due-list">
      {items.length === 0 && <NothingDue />}
      {STATES.map((state) => {
        const those = byDay.filter((item) => item.state === state)
        if (those.length === 0) return null
        return (
          <section key={state} className={`due-group due-${state}`} aria-labelledby={`due-${state}`}>
            <h2 id={`due-${state}`}>
              <StateSign state={state} />
              {stateInWords(state)}
            </h2>
            <ol>
              {those.map((item) => (
                <li key={`${item.task} ${item.subject}`}>
                  <DueItem
                    household={household}
                    item={item}
                    on={on}
                    whyHref={whyHref?.(item) ?? null}
                    look={looks?.get(item.subject)}
                  >
                    {actions?.(item)}
                  </DueItem>
                </li>
              ))}
            </ol>
          </section>
        )
      })}
      {warnings.length > 0 && <Warnings warnings={warnings} />}
    </div>
  )
}

/** What the plan found odd about the home: said once, below what is due. */
export function Warnings({ warnings }: { warnings: Warning[] }) {
  return (
    <section className="notices" aria-labelledby="notices">
      <h2 id="notices">Worth knowing</h2>
      <ul>
        {warnings.map(({ code, subject, say }) => (
          <li key={`${code} ${subject}`}>{say}</li>
        ))}
      </ul>
    </section>
  )
}

function NothingDue() {
  return (
    <div className="nothing">
      <h2>Nothing is due</h2>
      <p>
        No filter, service or device of this home needs anything that we know of. If something is missing here, add it
        to the description of the home.
      </p>
    </div>
  )
}
