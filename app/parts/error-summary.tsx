export interface Fault {
  /** The id of the field it is about; without one it is about the whole form. */
  field?: string
  say: string
}

/** All faults of a form at its top, each leading to its field. Nothing where there is none. */
export function ErrorSummary({ faults }: { faults: Fault[] }) {
  if (faults.length === 0) return null
  return (
    <section className="faults" role="alert" aria-labelledby="faults">
      <h2 id="faults">{faults.length === 1 ? 'One thing to put right' : `${faults.length} things to put right`}</h2>
      <ul>
        {faults.map(({ field, say }) => (
          <li key={`${field} ${say}`}>{field ? <a href={`#${field}`}>{say}</a> : say}</li>
        ))}
      </ul>
    </section>
  )
}
