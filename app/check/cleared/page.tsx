import type { Metadata } from 'next'
import { ClearanceForm } from '../clearance-form'
import { phonePlace } from '../load-place'
import { clearOnPhone } from './actions'

export const metadata: Metadata = { title: 'A professional was here' }

export default async function Page() {
  const { today } = await phonePlace()
  return (
    <main id="main" tabIndex={-1} className="guide">
      <h1>A professional was here</h1>
      <p className="lead">
        Only a fire crew, the gas company or a licensed technician can say that a hazard is over. If no one was here,
        nothing has changed: leave it as it is.
      </p>
      <ClearanceForm action={clearOnPhone} household="" today={today} />
      <nav className="guide-ways" aria-label="The guide">
        <a href="/check">Back to the hazards</a>
      </nav>
    </main>
  )
}
