import type { Metadata } from 'next'
import { CHECK_LINES } from '@/app/parts/guide/check-lines'
import { HazardWords } from '@/app/parts/guide/hazard-words'
import { FLOWS } from '@/content/guide/flows'
import { FIRST_SCREEN } from '@/content/guide/hazards'
import { GUIDE_SOURCES } from '@/content/guide/sources'
import { DEFAULT_EMERGENCY_NUMBER, fillEmergency } from '@/lib/guide/export'
import type { Flow, GuideNode, Slot } from '@/lib/guide/types'
import { conditionInWords, ENDINGS, printedAnswers, printedSkips, stepsOf } from './steps'

export const metadata: Metadata = { title: 'The guide on paper' }

const SEVERITY = ['No visit needed now', 'A visit in the next days', 'Today', 'Emergency'] as const
const SLOT: Record<Slot, string> = {
  call: 'Call',
  say: 'Say',
  dont: 'Leave alone',
  watch: 'Urgent if',
  meanwhile: 'Until then',
  tenant: 'Landlord',
}

/** Every flow for a fridge door or a landlord's folder, made from the same content as the screens. */
export default function Page() {
  return (
    <main id="main" tabIndex={-1} className="guide booklet">
      <h1>The guide on paper</h1>
      {FIRST_SCREEN.map((hazard) => (
        <HazardWords key={hazard} hazard={hazard} number={DEFAULT_EMERGENCY_NUMBER} call={false} />
      ))}
      <h2>How to use it</h2>
      <p>
        Begin at step 1 of your trouble, and go where each answer sends you. Not sure counts as yes. One start only:
        write down here when it was given, and do not give another until a technician has been.
      </p>
      <p className="write-down">The one start was given on ____________________ by ____________________</p>
      <p>
        If anything changes, or after 15 minutes, a start or a wait: read the first page again. If something new is
        there, stop, and do what it says.
      </p>
      <nav className="no-print" aria-label="Parts">
        <ul>
          {FLOWS.map(({ id, title }) => (
            <li key={id}>
              <a className="plain-tap" href={`#${id}`}>
                {title}
              </a>
            </li>
          ))}
          <li>
            <a className="plain-tap" href="#endings">
              Endings
            </a>
          </li>
        </ul>
      </nav>
      {FLOWS.map((flow) => (
        <PrintedFlow key={flow.id} flow={flow} />
      ))}
      <section className="flow" id="endings">
        <h2>Endings</h2>
        {ENDINGS.map((node, i) => (
          <Ending key={node.id} node={node} number={i + 1} />
        ))}
      </section>
      <section className="flow">
        <h2>Where it comes from</h2>
        <ul>
          {GUIDE_SOURCES.map(({ id, name, mark }) => (
            <li key={id}>
              {name}
              {mark.endsWith('?') && ' (from memory, or a copy of its text)'}
            </li>
          ))}
        </ul>
      </section>
    </main>
  )
}

function PrintedFlow({ flow }: { flow: Flow }) {
  return (
    <section className="flow" id={flow.id}>
      <h2>{flow.title}</h2>
      <ol>
        {stepsOf(flow).map((node, i) => (
          <li key={node.id} className="step">
            <p>
              <strong>{i + 1}.</strong> {node.turnsOn && <strong>The one start. </strong>}
              <Words node={node} />
            </p>
            {printedSkips(flow, node).map((skip) => (
              <p key={skip} className="hint">
                {skip}
              </p>
            ))}
            <ul className="step-answers">
              {printedAnswers(flow, node).map(({ text, where }) => (
                <li key={`${text} ${where}`}>
                  {text} → <strong>{where}</strong>
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ol>
    </section>
  )
}

function Words({ node }: { node: GuideNode }) {
  if (node.kind !== 'check') return fillEmergency(node.text)
  return node.text.split('\n').map((line) => {
    const [name = '', said] = [line.slice(0, line.indexOf(': ')), line.slice(line.indexOf(': ') + 2)]
    return (
      <span key={name}>
        <em>{CHECK_LINES[name] ?? name}:</em> {said}{' '}
      </span>
    )
  })
}

function Ending({ node, number }: { node: GuideNode; number: number }) {
  return (
    <div className="step">
      <h3>
        Ending {number}: {SEVERITY[node.severity ?? 0]}
      </h3>
      <p>
        <strong>{fillEmergency(node.text)}</strong>
      </p>
      {(node.sections ?? []).map(({ slot, text, when }) => (
        <p key={`${slot} ${text}`}>
          <em>
            {SLOT[slot]}
            {when && `, if ${conditionInWords(when)}`}:
          </em>{' '}
          {fillEmergency(text)}
        </p>
      ))}
    </div>
  )
}
