import type { Metadata } from 'next'
import { databasePage } from '@/app/database-page'
import { now } from '@/app/now'
import { requireViewer } from '@/lib/access/page'
import { listFeeds } from '@/lib/data/feeds'
import { listHomes } from '@/lib/data/households'
import { findAddress } from '@/lib/data/mail-links'
import { listSent } from '@/lib/data/outgoing'
import { countPushTargets } from '@/lib/data/push-targets'
import { findReminding } from '@/lib/data/remindings'
import { mailSettings } from '@/lib/outbound/mailer'
import { canPush, pushKeys } from '@/lib/outbound/push-keys'
import { Calendars } from './calendars'
import { Mails } from './mails'
import { Notices } from './notices'

export const metadata: Metadata = { title: 'Reminders' }

export default databasePage(async () => {
  await now()
  const viewer = await requireViewer('/account/reminders')
  const homes = await listHomes(viewer)
  const settings = mailSettings()
  const timeZone = homes[0]?.timeZone ?? 'America/Chicago'
  const reminding = await findReminding(viewer)
  return (
    <main id="main" tabIndex={-1}>
      <h1>Reminders</h1>
      <p className="lead">What is due, where you look anyway. Nothing is sent when there is nothing to say.</p>
      <Calendars feeds={await listFeeds(viewer)} homes={homes} />
      <Mails
        wish={reminding ?? { mail: false, weekday: 6, hour: 9, timeZone }}
        address={await findAddress(viewer.accountId)}
        missing={settings.ok ? [] : settings.missing}
        sent={await listSent(viewer)}
      />
      {canPush() && <Notices publicKey={pushKeys().publicKey} browsers={await countPushTargets(viewer)} />}
    </main>
  )
})
