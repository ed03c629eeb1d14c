import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { GoOn } from '@/app/check/go-on'
import { homePlace } from '@/app/check/load-place'
import { Remembered } from '@/app/check/remembered'
import { saidAt } from '@/app/check/said-at'
import { databasePage } from '@/app/database-page'
import { TroubleList } from '@/app/parts/guide/trouble-list'
import { WhichSystem } from './which-system'

export const metadata: Metadata = { title: 'What is the trouble?' }

type Props = {
  params: Promise<{ household: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

/** Reached by "no gas smell" only; any other way leads to the hazards first. */
async function Page({ params, searchParams }: Props) {
  const { household: id } = await params
  const { at: said, system } = await searchParams
  const base = `/home/${id}/check`
  const place = await homePlace(id, base, system)
  const at = saidAt(said, place.now)
  if (at === null || place.home === null) redirect(base)
  const { systems } = place.home.profile
  if (systems.length > 1 && system === undefined) return <WhichSystem home={place.home} at={at} />
  return (
    <TroubleList place={place} at={at}>
      <Remembered place={place} clearanceHref={`${base}/clearance`} />
      <GoOn base={base} />
    </TroubleList>
  )
}

export default databasePage(Page)
