import type { Metadata } from 'next'
import { homePlace } from '@/app/check/load-place'
import { databasePage } from '@/app/database-page'
import { FirstScreen } from '@/app/parts/guide/first-screen'
import { emergencyNumber } from '@/lib/guide/place'

export const metadata: Metadata = { title: 'Get out now' }

type Props = { params: Promise<{ household: string }> }

async function Page({ params }: Props) {
  const { household: id } = await params
  return <FirstScreen next={null} number={emergencyNumber(await homePlace(id, `/home/${id}/check`, null))} />
}

export default databasePage(Page)
