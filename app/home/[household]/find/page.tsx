import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { Drawing } from '@/app/parts/drawings/drawing'
import { OfWhat } from '@/app/parts/of-what'
import { FINDER_CARD_TEXTS } from '@/content/finder/card-texts'
import { mediumInWords, sizeInWords } from '@/lib/core/filter-words'
import { subjectInWords } from '@/lib/core/subject-words'
import { may } from '@/lib/core/viewer'
import { listPhotos } from '@/lib/data/photos'
import { PhotoList } from '../../../photo-list'
import { HomeNav } from '../home-nav'
import { loadHome } from '../load'

type Props = {
  params: Promise<{ household: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

export const generateMetadata = homeTitle('Find')

export default databasePage(async ({ params, searchParams }: Props) => {
  const { household: id } = await params
  const { saved } = await searchParams
  const { viewer, stored } = await loadHome(id, `/home/${id}/find`)
  const { household } = stored
  const photos = await listPhotos(viewer, id)
  return (
    <>
      <HomeNav id={id} home={household} current="Find" />
      <main id="main" tabIndex={-1}>
        <h1>Where the filters are</h1>
        {saved && (
          <p className="notice" role="status">
            Saved. The days are reckoned anew.
          </p>
        )}
        {household.filters.length === 0 && <p className="lead">No filter of this home is known yet.</p>}
        {household.filters.map((filter) => {
          const text = FINDER_CARD_TEXTS.places.find(({ place }) => place === filter.place)
          return (
            <section key={filter.id} className="filter-card">
              <h2>{text?.name ?? subjectInWords(household, filter.id)}</h2>
              {filter.medium !== 'screen' && (
                <p className="filter-card-size">
                  <span>Size to buy, inches</span> <strong>{sizeInWords(filter.nominal)}</strong>
                </p>
              )}
              <p>
                {mediumInWords(filter.medium, filter.merv)}. {text?.arrow?.say}
              </p>
              {stored.placeNotes[filter.id] && <p>{stored.placeNotes[filter.id]}</p>}
              {text && (
                <div className="drawings">
                  <Drawing id={text.drawing} />
                </div>
              )}
              <PhotoList
                home={id}
                household={household}
                photos={photos.filter(({ subject }) => subject === filter.id)}
              />
              <p className="buttons">
                <Link className="button" href={`/home/${id}/filters/${encodeURIComponent(filter.id)}/label`}>
                  A label to print
                  <OfWhat>{subjectInWords(household, filter.id)}</OfWhat>
                </Link>
                <Link className="button" href={`/home/${id}/photos?about=${encodeURIComponent(filter.id)}`}>
                  Add a photo
                  <OfWhat>{subjectInWords(household, filter.id)}</OfWhat>
                </Link>
              </p>
            </section>
          )
        })}
        {may(stored.role, 'record') && stored.state === 'open' && (
          <p className="buttons">
            <Link className="button main" href={`/find?home=${id}`} prefetch={false}>
              {household.filters.length === 0 ? 'Find the filter' : 'Find a filter, or check one'}
            </Link>
            <Link className="button" href={`/home/${id}/renters`}>
              Links for renters
            </Link>
          </p>
        )}
      </main>
    </>
  )
})
