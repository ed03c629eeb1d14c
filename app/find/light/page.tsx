import Link from 'next/link'
import { Drawing } from '@/app/parts/drawings/drawing'
import { FINDER_ESCAPE } from '@/content/finder/finder'
import { fillEmergency } from '@/lib/guide/export'
import { LightCamera } from './light-camera'

export const metadata = { title: 'Judge a filter by its light' }

/** The light test: three drawings to judge by eye, and where scripts run a camera that compares. */
export default function Page() {
  return (
    <main id="main" tabIndex={-1} className="find">
      <p className="find-escape">
        {fillEmergency(FINDER_ESCAPE)} <Link href="/check">Something is wrong</Link>
      </p>
      <h1>How much light comes through?</h1>
      <p className="find-line">
        The filter is out, and heat, cooling and fan are off? Hold it before a lamp, never a flame, and compare.{' '}
        <Link href="/find">Not out yet: find it first</Link>.
      </p>
      <p className="caution">
        <strong>Caution.</strong> Dust falls out: hold it away from your face. A filter that is torn, wet or sucked in
        is changed, whatever the light says.
      </p>
      <ul className="lights">
        <li>
          <Drawing id="light-clear" />
          <p>
            <strong>Clear.</strong> It can go back, the arrow the same way.
          </p>
        </li>
        <li>
          <Drawing id="light-half" />
          <p>
            <strong>Half.</strong> It can go back for now. Get a new one, and look again soon.
          </p>
        </li>
        <li>
          <Drawing id="light-dark" />
          <p>
            <strong>Dark.</strong> Change it now. Never run the unit without a filter.
          </p>
        </li>
      </ul>
      <LightCamera />
    </main>
  )
}
