import type { Brief } from '@/lib/guide/brief'

/** The page for the technician: plain lines under headings, for paper and for reading out. */
export function BriefSheet({ brief }: { brief: Brief }) {
  return (
    <article className="brief">
      <h1>{brief.title}</h1>
      {brief.sections.map(({ heading, lines }) => (
        <section key={heading}>
          <h2>{heading}</h2>
          <ul>
            {lines.map((line, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: lines may repeat, and the page never changes
              <li key={i}>{line}</li>
            ))}
          </ul>
        </section>
      ))}
    </article>
  )
}
