import { OneButton } from '@/app/home/[household]/one-button'
import { takePhotoAway } from '@/app/home/[household]/photos/actions'
import { OfWhat } from '@/app/parts/of-what'
import { sentenceOf } from '@/app/sentence-of'
import type { Household } from '@/lib/core/household'
import { subjectInWords } from '@/lib/core/subject-words'
import type { Photo } from '@/lib/data/photos'
import { momentInWords } from './moment-in-words'
import { PHOTO_FAULTS } from './photo-faults'
import { PhotoForm } from './photo-form'
import { PhotoList, photoInWords } from './photo-list'

interface PhotosPageProps {
  id: string
  household: Household
  photos: Photo[]
  mayAdd: boolean
  /** Whether this viewer may take a photo away. */
  mayRemove: (photo: Photo) => boolean
  search: Record<string, string | string[] | undefined>
}

/** All photos of a home and the form for one more: the same for an account and for a renter's link. */
export function PhotosPage({ id, household, photos, mayAdd, mayRemove, search }: PhotosPageProps) {
  const fault = sentenceOf(PHOTO_FAULTS, search.fault)
  const choices = [
    ...household.filters.flatMap((filter) => {
      const name = subjectInWords(household, filter.id)
      return [
        { value: `filter ${filter.id}`, label: `The filter: ${name}` },
        { value: `look ${filter.id}`, label: `How it looks against a lamp: ${name}` },
      ]
    }),
    ...household.systems.map(({ id, name }) => ({ value: `plate ${id}`, label: `The rating plate: ${name}` })),
  ]
  return (
    <main id="main" tabIndex={-1}>
      <h1>Photos</h1>
      {fault && (
        <section className="faults" role="alert">
          <h2>The photo was not kept</h2>
          <p>{fault}</p>
        </section>
      )}
      {search.did === 'added' && (
        <p className="notice" role="status">
          Kept.
        </p>
      )}
      {search.did === 'removed' && (
        <p className="notice" role="status">
          Taken away for good.
        </p>
      )}
      {photos.length === 0 && <p className="lead">None yet. A photo of the filter’s place saves the next search.</p>}
      {photos.map((photo) => (
        <div key={photo.id} className="photo">
          <PhotoList home={id} household={household} photos={[photo]} />
          <p>
            {photoInWords(household, photo)}.{' '}
            <span className="hint">
              {photo.byName}, {momentInWords(photo.at, household.timeZone)}
            </span>
          </p>
          {mayRemove(photo) && (
            <OneButton action={takePhotoAway} fields={{ household: id, photo: photo.id }}>
              Take it away for good
              <OfWhat>
                {photoInWords(household, photo)}, by {photo.byName}, {momentInWords(photo.at, household.timeZone)}
              </OfWhat>
            </OneButton>
          )}
        </div>
      ))}
      {mayAdd && choices.length > 0 && (
        <section aria-labelledby="add">
          <h2 id="add">Add a photo</h2>
          <p>
            Take it from where you stand safely. Open no cover for it: the rating plate is often behind the filter door,
            and may stay there.
          </p>
          <PhotoForm
            household={id}
            choices={choices}
            chosen={typeof search.about === 'string' ? `filter ${search.about}` : undefined}
          />
        </section>
      )}
    </main>
  )
}
