import { databasePage } from '@/app/database-page'
import { HomeNav } from '@/app/home/[household]/home-nav'
import { loadHome } from '@/app/home/[household]/load'
import { homeTitle } from '@/app/home/[household]/title'
import { now } from '@/app/now'
import { OpenInvitations } from '@/app/open-invitations'
import type { PageProps } from '@/app/page-props'
import { ActionForm } from '@/app/parts/action-form'
import { FormField } from '@/app/parts/form-field'
import { SubmitButton } from '@/app/parts/submit-button'
import { dateInWords } from '@/lib/core/day-words'
import { may } from '@/lib/core/viewer'
import { listInvitations } from '@/lib/data/invitations'
import { listMembers } from '@/lib/data/members'
import { mailSettings } from '@/lib/outbound/mailer'
import { inviteAdult, revokeHomeInvitation } from './actions'
import { MemberList } from './member-list'
import { MovingOut } from './moving-out'

export const generateMetadata = homeTitle('People')

export default databasePage(async ({ params }: PageProps<{ household: string }>) => {
  const { household: id } = await params
  const { viewer, stored } = await loadHome(id, `/home/${id}/people`)
  const at = await now()
  const owns = may(stored.role, 'own')
  const hidden = { household: id }
  return (
    <>
      <HomeNav id={id} home={stored} current="Details" />
      <main id="main" tabIndex={-1}>
        <h1>People of {stored.name}</h1>
        {stored.closedOn && (
          <p className="notice">
            This home was closed on {dateInWords(stored.closedOn)}. It can be read; nothing is due.
          </p>
        )}
        <MemberList members={await listMembers(viewer, id)} viewer={viewer} home={stored} />

        {owns && !stored.closedOn && (
          <>
            <h2>Look after it together</h2>
            <ActionForm action={inviteAdult} hidden={hidden}>
              <p>
                A second adult sees what is due and says what was done, as you do; only you decide about people, and
                about closing the home.
              </p>
              {mailSettings().ok && (
                <FormField
                  id="email"
                  type="email"
                  inputMode="email"
                  label="Their e-mail, if the link is to be sent to them"
                  hint="Left empty, you pass the link on yourself."
                />
              )}
              <SubmitButton>Make an invitation link</SubmitButton>
            </ActionForm>
          </>
        )}
        <OpenInvitations
          invitations={await listInvitations(viewer, at, id)}
          at={at}
          revoke={revokeHomeInvitation}
          hidden={hidden}
        />

        <h2>Take it with you</h2>
        <p>
          The home as a household file: what is there, what was done, what was measured. Names, contacts and notes are
          not in it.
        </p>
        <p>
          <a className="button" href={`/home/${id}/export`} download>
            Save the household file
          </a>
        </p>
        <MovingOut home={stored} />
      </main>
    </>
  )
})
