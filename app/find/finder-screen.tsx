import Link from 'next/link'
import type { MouseEvent, ReactNode, Ref } from 'react'
import { Drawing } from '@/app/parts/drawings/drawing'
import { HazardText } from '@/app/parts/hazard-text'
import { FINDER_ESCAPE } from '@/content/finder/finder'
import type { DrawingId } from '@/lib/guide/drawing-ids'
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
  /** Goes on without asking the server; where it is missing the links do it. */
  go?: (href: string) => void
  ref?: Ref<HTMLElement>
}

// What the address carries along besides the answers: the home, and a size already typed.
const CARRIED = ['home', 'from', 'w', 'h', 'd', 'u']

/** One screen of the finder: a question, an end, or the card. */
export function FinderScreen({ walk, began, field, go, ref }: FinderScreenProps) {
  const { screen } = walk
  const rest = Object.fromEntries(CARRIED.map((name) => [name, field(name)]))
  const href = (a: string) => finderHref({ a, t: began, k: walk.kept, rest })
  if (screen.kind === 'referral' && screen.severity === 3) return <Leave screen={screen} ref={ref} />
  const before = addressBefore(walk)
  return (
    <main id="main" tabIndex={-1} className="find" ref={ref}>
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
      {screen.kind === 'question' && <Question screen={screen} href={(id) => href(addressAfter(walk, id))} go={go} />}
      {screen.kind === 'referral' && <End screen={screen} />}
      {screen.kind === 'card' && (
        <CardScreen walk={walk} answers={answersOf(walk)} began={began} field={field} rest={rest} go={go} />
      )}
      <p className="find-back no-print">
        {before !== null && (
          <Step href={before === '' ? finderHref({ a: '', t: '', rest }) : href(before)} go={go}>
            One step back
          </Step>
        )}
        {walk.steps.length > 0 && (
          <Step href={finderHref({ a: '', t: '', rest: { home: field('home') } })} go={go}>
            Start again
          </Step>
        )}
        {isHomeId(field('home')) && (
          <Link href={`/f/${field('home')}`} prefetch={false}>
            Back to the home
          </Link>
        )}
        {walk.steps.length === 0 && <Link href="/find/kept">Cards kept on this phone</Link>}
        {walk.steps.length === 0 && <Link href="/find/light">Judge a filter by its light</Link>}
      </p>
    </main>
  )
}

function isHomeId(text: string): boolean {
  return /^[0-9a-z]{16}$/.test(text)
}

function answersOf(walk: FinderWalk): string {
  return addressOf(walk.steps.map(({ answer }) => answer.id))
}

/** A link to another screen of the finder; with `go` it is followed on the phone itself. */
export function Step(props: { href: string; go?: (href: string) => void; className?: string; children: ReactNode }) {
  const { href, go, className, children } = props
  function follow(event: MouseEvent) {
    if (!go || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return
    event.preventDefault()
    go(href)
  }
  return (
    <a href={href} className={className} onClick={follow}>
      {children}
    </a>
  )
}

function Escape() {
  return (
    <p className="find-escape">
      {FINDER_ESCAPE} <Link href="/check">Something is wrong</Link>
    </p>
  )
}

/** The end that nobody reads inside: what to do, and nothing to tap. */
function Leave({ screen, ref }: { screen: FinderReferral; ref?: Ref<HTMLElement> }) {
  return (
    <main id="main" tabIndex={-1} className="find leave" ref={ref}>
      <HazardText level={1} heading={screen.title} lines={screen.text} />
    </main>
  )
}

function Question(props: { screen: FinderQuestion; href: (answer: string) => string; go?: (href: string) => void }) {
  const { screen, href, go } = props
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
            <Step className="row" href={href(id)} go={go}>
              {say}
            </Step>
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
