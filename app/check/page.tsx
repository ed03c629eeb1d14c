import type { Metadata } from 'next'
import { HazardText } from '@/app/parts/hazard-text'
import { FIRST_SCREEN, HAZARD_TEXTS, type HazardText as Hazard } from '@/content/guide/hazards'

export const metadata: Metadata = { title: 'A problem right now' }

const ALL = Object.values(HAZARD_TEXTS)
const FIRST = FIRST_SCREEN.map((hazard) => HAZARD_TEXTS[hazard])
const OTHERS = ALL.filter(({ hazard }) => !FIRST_SCREEN.includes(hazard))

/** Asks nothing and needs nothing: it opens also while the database does not answer. */
export default function Page() {
  return (
    <main id="main" tabIndex={-1}>
      <h1 className="visually-hidden">A problem right now</h1>
      {FIRST.map((text) => (
        <HazardText
          key={text.hazard}
          heading={`${text.signal}: ${text.title}`}
          lines={[said(text), part(text, 'dont')]}
        >
          <p>{part(text, 'call')}</p>
        </HazardText>
      ))}

      <h2>None of these? Then one of these?</h2>
      <dl className="stops">
        {OTHERS.map((text) => (
          <div key={text.hazard}>
            <dt>
              {text.signal}: {text.title}
            </dt>
            <dd>
              {said(text)} {part(text, 'dont')}
            </dd>
            <dd>{part(text, 'call')}</dd>
          </div>
        ))}
      </dl>

      <h2>Whom to call for all else</h2>
      <p>A licensed heating and cooling technician. Say what you see, what was tried, and who is in the home.</p>
      <p>If you rent, your landlord too, in writing, with the time and how warm it is inside.</p>
      <p>Gas, burners, wiring and whatever lies behind a cover are a technician’s, never yours.</p>
    </main>
  )
}

// The word of danger stands in the heading here.
function said({ text, signal }: Hazard): string {
  return withNumber(text.replace(`${signal}. `, ''))
}

function part({ sections }: Hazard, slot: 'call' | 'dont'): string {
  return withNumber(sections.find((section) => section.slot === slot)?.text ?? '')
}

function withNumber(text: string): string {
  return text.replaceAll('{emergency}', '911')
}
