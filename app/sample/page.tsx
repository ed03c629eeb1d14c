import Link from 'next/link'
import { today } from '@/app/today'
import { sampleFile } from '@/content/sample'
import { tables } from '@/content/tables'
import { planHousehold } from '@/lib/core/plan'
import { peopleInWords, stateInWords, taskInWords } from '@/lib/core/words'

export const metadata = { title: 'Sample homes' }

export default async function Page() {
  const { households } = sampleFile(await today('America/Chicago'))
  const homes = await Promise.all(
    households.map(async (home) => ({ home, plan: planHousehold(home, tables, await today(home.timeZone)) })),
  )
  return (
    <main id="main" tabIndex={-1}>
      <h1>Three sample homes</h1>
      <p className="lead">
        Invented homes to look around in. Nothing you see here is anybody’s, and nothing can be changed.
      </p>
      <ul className="plain-list">
        {homes.map(({ home, plan }) => {
          const first = plan.items[0]
          return (
            <li key={home.id}>
              <h2>
                <Link href={`/sample/${home.id}`}>{home.name}</Link>
              </h2>
              <p>{peopleInWords(home)}.</p>
              {first && (
                <p>
                  First: {taskInWords(first.task).toLowerCase()} ({stateInWords(first.state).toLowerCase()}).
                </p>
              )}
            </li>
          )
        })}
      </ul>
    </main>
  )
}
