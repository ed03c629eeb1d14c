import type { Metadata } from 'next'
import { homePlace } from '@/app/check/load-place'
import { searchOf } from '@/app/check/search'
import { WatchView } from '@/app/check/watch/watch-view'
import { databasePage } from '@/app/database-page'

export const metadata: Metadata = { title: 'Time the start' }

type Props = {
  params: Promise<{ household: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

async function Page({ params, searchParams }: Props) {
  const { household: id } = await params
  const asked = await searchParams
  const search = searchOf(asked)
  return <WatchView place={await homePlace(id, `/home/${id}/check/watch${search}`, asked.system)} search={search} />
}

export default databasePage(Page)
