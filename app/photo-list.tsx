import type { Photo } from '@/lib/data/photos'

/** Photos of one thing, each leading to itself in full size. */
export function PhotoList({ home, photos }: { home: string; photos: Photo[] }) {
  if (photos.length === 0) return null
  return (
    <ul className="photos">
      {photos.map(({ id, width, height, byName, at }) => (
        <li key={id}>
          <a href={`/home/${home}/photos/${id}`}>
            {/* biome-ignore lint/performance/noImgElement: only those who may see the home may fetch it, so no optimizer stands between. */}
            <img
              src={`/home/${home}/photos/${id}`}
              width={width}
              height={height}
              loading="lazy"
              alt={`By ${byName}, ${at.slice(0, 10)}`}
            />
          </a>
        </li>
      ))}
    </ul>
  )
}
