import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { databasePage } from '@/app/database-page'
import { currentLink } from '@/lib/access/links'
import { findViewer } from '@/lib/access/page'
import { findRoleIn } from '@/lib/data/members'

type Props = { params: Promise<{ household: string; filter: string }> }

export const metadata = { title: 'A filter' }

/**
 * Where the code on a printed label leads. It opens nothing by itself: whoever scans it goes on with the account or the
 * renter's link that this browser holds, or signs in.
 */
export default databasePage(async ({ params }: Props) => {
  const { household, filter } = await params
  const viewer = await findViewer()
  if (viewer && (await findRoleIn(viewer, household))) redirect(`/home/${household}/record/change-filter/${filter}`)
  const link = await currentLink(await headers())
  if (link?.householdId === household) redirect(`/r/record/change-filter/${filter}`)
  redirect(`/sign-in?next=${encodeURIComponent(`/f/${household}/${filter}`)}`)
})
