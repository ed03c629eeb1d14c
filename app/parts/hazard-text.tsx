import type { ReactNode } from 'react'

interface HazardTextProps {
  heading: string
  /** What to do, a line each; nothing here may be a link or a button that keeps a person inside. */
  lines: string[]
  /** What is only for afterwards, outside: a number to call. */
  children?: ReactNode
  level?: 1 | 2
}

/** The loudest thing there is: filled with ink, and put first on its page. */
export function HazardText({ heading, lines, children, level = 2 }: HazardTextProps) {
  const Heading = level === 1 ? 'h1' : 'h2'
  return (
    <section className="hazard" aria-label={heading}>
      <Heading>
        <HazardSign />
        <span>{heading}</span>
      </Heading>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {children && <div className="hazard-after">{children}</div>}
    </section>
  )
}

function HazardSign() {
  return (
    <svg className="hazard-sign" viewBox="0 0 32 29" aria-hidden="true" focusable="false">
      <path d="M16 2 30.5 27.5H1.5Z" fill="none" stroke="currentColor" strokeWidth="3" strokeLinejoin="round" />
      <path d="M16 10v8.5M16 22v2.6" stroke="currentColor" strokeWidth="3.2" />
    </svg>
  )
}
