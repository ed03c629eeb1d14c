import type { Home } from '@/lib/data/households'

/** Which home: its guide knows the equipment, whom to call, and what was tried there before. */
export function WhichHome({ homes, at }: { homes: Home[]; at: number }) {
  return (
    <main id="main" tabIndex={-1} className="guide">
      <h1>Which home?</h1>
      <ul className="taps">
        {homes.map(({ id, name }) => (
          <li key={id}>
            <a className="tap" href={`/home/${id}/check/trouble?at=${at}`}>
              {name}
            </a>
          </li>
        ))}
        <li>
          <a className="tap" href={`/check/trouble?at=${at}&home=other`}>
            Another home
          </a>
        </li>
      </ul>
      <p>
        <a className="plain-tap" href="/check/emergency">
          Something changed: gas smell, alarm, smoke, someone ill
        </a>
      </p>
    </main>
  )
}
