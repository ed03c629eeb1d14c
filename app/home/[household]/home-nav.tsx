import { PlaceNav } from '@/app/parts/place-nav'

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
export function HomeNav({ id, name, current }: { id: string; name: string; current: HomePlace }) {
  const places = PLACES.map(({ path, label }) => ({
    href: `/home/${id}${path}`,
    label,
    current: label === current,
  }))
  return <PlaceNav places={places} home={{ name, href: `/home/${id}` }} />
}
