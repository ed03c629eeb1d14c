import { PlaceNav } from '@/app/parts/place-nav'
import { homeInWords, type Named } from '@/lib/core/subject-words'

const PLACES = [
  { path: '', label: 'Due' },
  { path: '/year', label: 'Year' },
  { path: '/check', label: 'Check' },
  { path: '/find', label: 'Find' },
  { path: '/log', label: 'Log' },
  { path: '/details', label: 'Details' },
] as const

export type HomePlace = (typeof PLACES)[number]['label']

/** The places of one home; pages that belong to none of them name the one they lead back to. */
export function HomeNav({ id, home, current }: { id: string; home: Named; current: HomePlace }) {
  const places = PLACES.map(({ path, label }) => ({
    href: `/home/${id}${path}`,
    label,
    current: label === current,
  }))
  return <PlaceNav places={places} home={{ name: homeInWords(home), href: `/home/${id}` }} />
}
