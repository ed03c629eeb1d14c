import type { Metadata } from 'next'
import { homePlace } from '@/app/check/load-place'
import { RememberHome } from '@/app/check/remember-home'
import { databasePage } from '@/app/database-page'
import { FirstScreen } from '@/app/parts/guide/first-screen'
import { emergencyNumber } from '@/lib/guide/place'

export const metadata: Metadata = { title: 'A problem right now' }

type Props = { params: Promise<{ household: string }> }

/** The first screen of the guide, with the number that this home calls in an emergency. */
async function Page({ params }: Props) {
  const { household: id } = await params
  const place = await homePlace(id, `/home/${id}/check`, null)
  return (
    <>
      <FirstScreen next={`/home/${id}/check/trouble?at=${place.now}`} number={emergencyNumber(place)} />
      {place.home && <RememberHome home={place.home} events={place.events} today={place.today} />}
    </>
  )
}

export default databasePage(Page)
