import type { Shown } from './actions'

/** Each column of the file with its first cells, and what it is taken for: the person may say otherwise. */
export function ColumnTable({ shown, columns }: { shown: Shown; columns: [string, string][] }) {
  return (
    <section aria-labelledby="columns">
      <h2 id="columns">What each column is</h2>
      <p>Days as 2026-11-25. Sizes in inches, like 16x25x1. An empty cell changes nothing.</p>
      <ul className="lines column-list">
        {shown.headings.map((heading, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two columns may have one heading; their place is what they are.
          <li key={i}>
            <label className="label" htmlFor={`column-${i}`}>
              {heading || `Column ${i + 1}`}
            </label>
            {shown.samples[i] && <p className="hint">{shown.samples[i]}</p>}
            <select key={shown.matching[i]} id={`column-${i}`} name={`column-${i}`} defaultValue={shown.matching[i]}>
              <option value="">Pass it over</option>
              {columns.map(([column, name]) => (
                <option key={column} value={column}>
                  {name}
                </option>
              ))}
            </select>
          </li>
        ))}
      </ul>
    </section>
  )
}
