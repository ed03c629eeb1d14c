import { PhotosPage } from '@/app/photos-page'
import { listPhotos } from '@/lib/data/photos'
import { rentedPage } from '../rented-page'
import { RenterNav } from '../renter-nav'

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

export const metadata = { title: 'Photos' }

export default rentedPage(async (home, { searchParams }: Props) => {
  const { viewer, stored } = home
  return (
    <>
      <RenterNav id={stored.id} home={stored.household} current="Photos" />
      <PhotosPage
        id={stored.id}
        household={stored.household}
        photos={await listPhotos(viewer, stored.id)}
        mayAdd={true}
        mayRemove={({ door, byName }) => door === 'link' && byName === viewer.name}
        search={await searchParams}
      />
    </>
  )
})
