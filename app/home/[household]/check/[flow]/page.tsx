import type { Metadata } from 'next'
import { RememberWalk } from '@/app/check/go-on'
import { homePlace } from '@/app/check/load-place'
import { NoSuchPart } from '@/app/check/no-such-part'
import { RememberHome } from '@/app/check/remember-home'
import { searchOf } from '@/app/check/search'
import { databasePage } from '@/app/database-page'
import { GuideScreen } from '@/app/parts/guide/guide-screen'
import { findFlow } from '@/content/guide/flows'

type Props = {
  params: Promise<{ household: string; flow: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { flow: id } = await params
  return { title: findFlow(id)?.title ?? 'The guide' }
}

async function Page({ params, searchParams }: Props) {
  const { household, flow: id } = await params
  const flow = findFlow(id)
  const asked = await searchParams
  const search = searchOf(asked)
  const href = `/home/${household}/check/${id}${search}`
  const place = await homePlace(household, href, asked.system)
  if (!flow) return <NoSuchPart place={place} />
  return (
    <>
      <GuideScreen flow={flow} search={search} place={place} unsaved={asked.unsaved === '1'} />
      <RememberWalk href={href} />
      {place.home && <RememberHome home={place.home} events={place.events} today={place.today} />}
    </>
  )
}

export default databasePage(Page)
