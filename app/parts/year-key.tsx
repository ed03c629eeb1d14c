import { YearIcon } from './year-drawing'
import type { YearMarks } from './year-marks'

/** What the shapes of the drawing stand for: only those that it holds. */
export function YearKey({ marks }: { marks: YearMarks }) {
  if (marks.lanes.length === 0 && marks.bars.length === 0) return null
  const kinds = new Set(marks.lanes.flatMap(({ events }) => events.map(({ kind }) => kind)))
  return (
    <ul className="year-key">
      {marks.lanes
        .filter(({ letter }) => letter)
        .map(({ letter, name }) => (
          <li key={letter}>
            <strong>{letter}</strong> {name}
          </li>
        ))}
      {kinds.has('changed') && <IconKey kind="changed" say="filter changed or washed" />}
      {kinds.has('forecast') && <IconKey kind="forecast" say="change or wash expected" />}
      {kinds.has('looked') && <IconKey kind="looked" say="looked at" />}
      {marks.lanes.some(({ load }) => load) && (
        <li>
          <svg viewBox="0 0 34 24" aria-hidden="true" focusable="false">
            <path className="year-load" d="M1 22H33V4Z" />
          </svg>
          filling up since the last change
        </li>
      )}
      {marks.bars.length > 0 && (
        <li>
          <svg viewBox="0 0 34 24" aria-hidden="true" focusable="false">
            <rect className="year-bar" x="1" y="6" width="32" height="12" rx="2" />
            <path className="year-bar-due" d="M27 3v18" />
          </svg>
          time for a service, its day ticked
        </li>
      )}
    </ul>
  )
}

function IconKey({ kind, say }: { kind: 'changed' | 'looked' | 'forecast'; say: string }) {
  return (
    <li>
      <svg viewBox="0 0 20 24" aria-hidden="true" focusable="false">
        <YearIcon icon={{ x: 10, y: 12, kind }} />
      </svg>
      {say}
    </li>
  )
}
