import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { PhotosPage } from '@/app/photos-page'
import { may } from '@/lib/core/viewer'
import { listPhotos } from '@/lib/data/photos'
import { HomeNav } from '../home-nav'
import { loadHome } from '../load'

type Props = {
  params: Promise<{ household: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

export const generateMetadata = homeTitle('Photos')

export default databasePage(async ({ params, searchParams }: Props) => {
  const { household: id } = await params
  const { viewer, stored } = await loadHome(id, `/home/${id}/photos`)
  return (
    <>
      <HomeNav id={id} home={stored.household} current="Find" />
      <PhotosPage
        id={id}
        household={stored.household}
        photos={await listPhotos(viewer, id)}
        mayAdd={may(stored.role, 'record') && stored.state === 'open'}
        mayRemove={() => may(stored.role, 'manage')}
        search={await searchParams}
      />
    </>
  )
})
