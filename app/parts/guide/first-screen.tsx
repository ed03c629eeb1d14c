import type { ReactNode } from 'react'
import { FIRST_SCREEN } from '@/content/guide/hazards'
import { HazardWords } from './hazard-words'

interface FirstScreenProps {
  /** Where "no gas smell" leads; null: the page only tells what to do, and leads nowhere. */
  next: string | null
  number: string
  /** The scripts that know where "no gas smell" leads are still on their way: only a page without scripts is led on. */
  opening?: boolean
  /** Said after the hazards, which nothing may push down. */
  children?: ReactNode
}

/** Before any tap: what to do about gas, CO and fire. It asks nothing of the network, of scripts or of an account. */
export function FirstScreen({ next, number, opening, children }: FirstScreenProps) {
  return (
    <main id="main" tabIndex={-1} className="guide" data-emergency={next === null || undefined}>
      <h1 className={next === null ? undefined : 'visually-hidden'}>
        {next === null ? 'Get out now' : 'A problem right now'}
      </h1>
      {FIRST_SCREEN.map((hazard) => (
        <HazardWords key={hazard} hazard={hazard} number={number} call={hazard === 'gas'} />
      ))}
      {children}
      {next !== null && (
        <section aria-labelledby="gas">
          <h2 id="gas">Do you smell gas?</h2>
          <ul className="printed">
            <li>
              <strong>Yes:</strong> stop tapping. Do what it says at the top.
            </li>
            <li>
              <strong>Not sure:</strong> that counts as yes.
            </li>
          </ul>
          <p className="taps">{opening ? <OpeningTap next={next} /> : <NoGasTap next={next} />}</p>
        </section>
      )}
    </main>
  )
}

function NoGasTap({ next }: { next: string }) {
  return (
    <a className="tap" href={next}>
      No gas smell here
    </a>
  )
}

function OpeningTap({ next }: { next: string }) {
  return (
    <>
      <span className="tap opening">One moment …</span>
      <noscript>
        <NoGasTap next={next} />
      </noscript>
    </>
  )
}
