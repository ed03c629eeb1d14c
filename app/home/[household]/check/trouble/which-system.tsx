import type { GuideHome } from '@/lib/guide/place'

/** Which of several systems has the trouble. Hazards count for all of them, and so does the one start. */
export function WhichSystem({ home, at }: { home: GuideHome; at: number }) {
  const base = `/home/${home.id}/check`
  return (
    <main id="main" tabIndex={-1} className="guide">
      <h1>Which one has the trouble?</h1>
      <p className="flow-name">{home.name}</p>
      <ul className="taps">
        {home.profile.systems.map(({ id, name }) => (
          <li key={id}>
            <a className="tap" href={`${base}/trouble?at=${at}&system=${encodeURIComponent(id)}`}>
              {name}
            </a>
          </li>
        ))}
        <li>
          <a className="tap" href={`${base}/trouble?at=${at}&system=none`}>
            More than one, or not sure
          </a>
        </li>
      </ul>
      <p>
        <a className="plain-tap" href={`${base}/emergency`}>
          Something changed: gas smell, alarm, smoke, someone ill
        </a>
      </p>
    </main>
  )
}
