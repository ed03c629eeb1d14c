import Link from 'next/link'
import { Drawing } from '@/app/parts/drawings/drawing'
import { HazardText } from '@/app/parts/hazard-text'
import { FINDER_ESCAPE, FINDER_REVIEWED } from '@/content/finder/finder'
import { dateInWords } from '@/lib/core/day-words'
import type { DrawingId } from '@/lib/guide/drawing-ids'
import { fillEmergency } from '@/lib/guide/export'
import { type FinderWalk, finderHref } from '@/lib/guide/finder-address'
import { addressAfter, addressBefore, addressOf } from '@/lib/guide/finder-replay'
import type { FinderQuestion, FinderReferral } from '@/lib/guide/finder-types'
import { CardScreen } from './card-screen'

export interface FinderScreenProps {
  walk: FinderWalk
  /** When the hazards were asked, for the addresses of the next screens. */
  began: string
  /** A field of the address, `''` where it has none. */
  field: (name: string) => string
}

// What the address carries along besides the answers: the home, and a size already typed.
const CARRIED = ['home', 'from', 'w', 'h', 'd', 'u']

/** One screen of the finder: a question, an end, or the card. */
export function FinderScreen({ walk, began, field }: FinderScreenProps) {
  const { screen } = walk
  const rest = Object.fromEntries(CARRIED.map((name) => [name, field(name)]))
  const href = (a: string) => finderHref({ a, t: began, k: walk.kept, rest })
  if (screen.kind === 'referral' && screen.severity === 3) return <Leave screen={screen} />
  const before = addressBefore(walk)
  return (
    <main id="main" tabIndex={-1} className="find">
      <Escape />
      {walk.isAskedAgain && (
        <p className="notice" role="status">
          More than 15 minutes have passed since you were asked if it is safe here. Please look again: then you go on
          where you were.
        </p>
      )}
      {walk.stray.length > 0 && (
        <p className="notice" role="status">
          The address holds an answer that does not belong here: “{walk.stray[0]?.slice(0, 40)}”. This is the last
          screen that fits.
        </p>
      )}
      {screen.kind === 'question' && <Question screen={screen} href={(id) => href(addressAfter(walk, id))} />}
      {screen.kind === 'referral' && <End screen={screen} />}
      {screen.kind === 'card' && (
        <CardScreen walk={walk} answers={answersOf(walk)} began={began} field={field} rest={rest} />
      )}
      <p className="find-back no-print">
        {before !== null && (
          <a href={before === '' ? finderHref({ a: '', t: '', rest }) : href(before)}>One step back</a>
        )}
        {walk.steps.length > 0 && <a href={finderHref({ a: '', t: '', rest: { home: field('home') } })}>Start again</a>}
        {isHomeId(field('home')) && (
          <Link href={`/f/${field('home')}`} prefetch={false}>
            Back to the home
          </Link>
        )}
        {walk.steps.length === 0 && <Link href="/find/kept">Cards kept on this phone</Link>}
        {walk.steps.length === 0 && <Link href="/find/light">Judge a filter by its light</Link>}
      </p>
      {walk.steps.length === 0 && (
        <p className="hint">
          What is said here of danger was last read against its sources on {dateInWords(FINDER_REVIEWED)}.
        </p>
      )}
    </main>
  )
}

function isHomeId(text: string): boolean {
  return /^[0-9a-z]{16}$/.test(text)
}

function answersOf(walk: FinderWalk): string {
  return addressOf(walk.steps.map(({ answer }) => answer.id))
}

function Escape() {
  return (
    <p className="find-escape">
      {fillEmergency(FINDER_ESCAPE)} <Link href="/check">Something is wrong</Link>
    </p>
  )
}

/** The end that nobody reads inside: what to do, and nothing to tap. */
function Leave({ screen }: { screen: FinderReferral }) {
  return (
    <main id="main" tabIndex={-1} className="find leave">
      <HazardText level={1} heading={screen.title} lines={screen.text} />
    </main>
  )
}

function Question({ screen, href }: { screen: FinderQuestion; href: (answer: string) => string }) {
  return (
    <>
      <h1>{screen.title}</h1>
      {screen.text.map((line) => (
        <p key={line} className="find-line">
          {line}
        </p>
      ))}
      <Cautions lines={screen.cautions} />
      <Drawings ids={screen.drawings} />
      <ul className="rows find-answers" aria-label="Answers">
        {screen.answers.map(({ id, say }) => (
          <li key={id}>
            <a className="row" href={href(id)}>
              {say}
            </a>
          </li>
        ))}
      </ul>
    </>
  )
}

function End({ screen }: { screen: FinderReferral }) {
  if (screen.severity === 2) return <HazardText level={1} heading={screen.title} lines={screen.text} />
  return (
    <>
      <h1>{screen.title}</h1>
      {screen.text.map((line) => (
        <p key={line} className="find-line">
          {line}
        </p>
      ))}
      <Drawings ids={screen.drawings} />
      {screen.offersCheck && (
        <p className="buttons">
          <Link className="button main" href="/check">
            Go to Check
          </Link>
        </p>
      )}
    </>
  )
}

function Cautions({ lines = [] }: { lines?: string[] | undefined }) {
  return lines.map((line) => (
    <p key={line} className="caution">
      <strong>Caution.</strong> {line}
    </p>
  ))
}

export function Drawings({ ids = [] }: { ids?: readonly DrawingId[] | undefined }) {
  if (ids.length === 0) return null
  return (
    <div className="drawings">
      {ids.map((id) => (
        <Drawing key={id} id={id} />
      ))}
    </div>
  )
}
