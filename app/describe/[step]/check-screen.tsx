import Link from 'next/link'
import { HomeSummary } from '@/app/describe/home-summary'
import { DESCRIBE_TABLES } from '@/app/describe/tables'
import { tables } from '@/content/tables'
import { today } from '@/lib/clock'
import { dayInWords } from '@/lib/core/day-words'
import type { Household } from '@/lib/core/household'
import { planHousehold } from '@/lib/core/plan'
import type { Item } from '@/lib/core/plan-types'
import { subjectInWords } from '@/lib/core/subject-words'
import { taskInWords } from '@/lib/core/words'
import type { DraftAnswers } from '@/lib/forms/describe/answers'
import { describedHome } from '@/lib/forms/describe/described-home'
import { stepBefore } from '@/lib/forms/describe/steps'
import { FinishForm } from './finish-form'

const FIRST_DATES = 8

/** Everything as it was understood, what had to be assumed, and the first dates: before anything is saved. */
export function CheckScreen({ draft, place }: { draft: DraftAnswers; place: string }) {
  const described = describedHome(draft, { tables: DESCRIBE_TABLES, today })
  if (!described.ok) {
    return (
      <main id="main" tabIndex={-1}>
        <p className="place">{place}</p>
        <h1>Almost there</h1>
        <section className="faults" aria-labelledby="faults">
          <h2 id="faults">
            {described.faults.length === 1
              ? 'One thing to put right'
              : `${described.faults.length} things to put right`}
          </h2>
          <ul>
            {described.faults.map(({ step, path, say }) => (
              <li key={`${step} ${path} ${say}`}>
                <Link href={`/describe/${step}`}>{say}</Link>
              </li>
            ))}
          </ul>
        </section>
      </main>
    )
  }
  const { home } = described
  const on = today(home.timeZone)
  const plan = planHousehold(home, tables, on)
  const before = stepBefore('check', draft) ?? 'home'
  return (
    <main id="main" tabIndex={-1}>
      <p className="place">{place}</p>
      <h1>Is this your home?</h1>
      <HomeSummary
        home={home}
        hrefOf={(part) =>
          `/describe/${stepOf(
            part,
            draft,
            home.systems.map(({ id }) => id),
          )}`
        }
      />
      <h2>The first dates</h2>
      {plan.items.length === 0 ? (
        <p>Nothing is due: no filter, service or device of this home needs anything that we know of.</p>
      ) : (
        <ol className="first-dates">
          {plan.items.slice(0, FIRST_DATES).map((item) => (
            <li key={`${item.task} ${item.subject}`}>
              <strong>{item.due <= on ? 'Now' : dayInWords(item.due, on)}</strong> {whatInWords(home, item)}
            </li>
          ))}
        </ol>
      )}
      {plan.items.length > FIRST_DATES && <p>And {plan.items.length - FIRST_DATES} more.</p>}
      {plan.warnings.length > 0 && (
        <>
          <h2>What is assumed, or worth knowing</h2>
          <ul>
            {plan.warnings.map(({ code, subject, say }) => (
              <li key={`${code} ${subject}`}>{say}</li>
            ))}
          </ul>
        </>
      )}
      <FinishForm back={`/describe/${before}`} />
    </main>
  )
}

/** The screen on which a part of the summary was answered. */
function stepOf(part: string, draft: DraftAnswers, systems: string[]): string {
  const [kind, id] = part.split('/')
  if (kind === 'systems') return `system-${Math.max(0, systems.indexOf(id ?? '')) + 1}`
  if (kind === 'filters') return Object.keys(draft).find((step) => step.startsWith('filter-')) ?? 'filter-1-1'
  return kind === 'climate' ? 'home' : (kind ?? 'home')
}

/** `Change the humidifier pad`, and not "…, humidifier" behind it. */
function whatInWords(home: Household, { task, subject }: Item): string {
  const [what, which] = [taskInWords(task), subjectInWords(home, subject)]
  return what.includes(which) ? what : `${what}, ${which}`
}
