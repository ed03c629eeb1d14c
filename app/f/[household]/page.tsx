import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { databasePage } from '@/app/database-page'
import { currentLink } from '@/lib/access/links'

type Props = { params: Promise<{ household: string }> }

/** The home itself, for pages that do not know who looks: a renter's link has a page of its own. */
export default databasePage(async ({ params }: Props) => {
  const { household } = await params
  const link = await currentLink(await headers())
  redirect(link?.householdId === household ? '/r' : `/home/${encodeURIComponent(household)}`)
})
