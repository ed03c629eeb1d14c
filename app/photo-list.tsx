import { dayInWords } from '@/lib/core/day-words'
import type { Household } from '@/lib/core/household'
import { subjectInWords } from '@/lib/core/subject-words'
import { localDay } from '@/lib/core/zone'
import type { Photo } from '@/lib/data/photos'

const KINDS = { filter: 'The filter', plate: 'The rating plate', look: 'A look at' } as const

/** What a photo shows: “The filter: wall grille”. */
export function photoInWords(household: Household, { kind, subject }: Photo): string {
  return `${KINDS[kind]}: ${subjectInWords(household, subject)}`
}

/** Photos of one thing, each leading to itself in full size. */
export function PhotoList({ home, household, photos }: { home: string; household: Household; photos: Photo[] }) {
  if (photos.length === 0) return null
  return (
    <ul className="photos">
      {photos.map((photo) => (
        <li key={photo.id}>
          <a href={`/home/${home}/photos/${photo.id}`}>
            {/* biome-ignore lint/performance/noImgElement: only those who may see the home may fetch it, so no optimizer stands between. */}
            <img
              src={`/home/${home}/photos/${photo.id}`}
              width={photo.width}
              height={photo.height}
              loading="lazy"
              alt={`${photoInWords(household, photo)}, by ${photo.byName}, ${dayInWords(localDay(photo.at, household.timeZone))}`}
            />
          </a>
        </li>
      ))}
    </ul>
  )
}
