import { PlaceNav } from '@/app/parts/place-nav'

const PLACES = [
  { href: '/homes', label: 'Homes' },
  { href: '/rounds', label: 'Rounds' },
  { href: '/supplies', label: 'Supplies' },
] as const

export type HomesPlace = (typeof PLACES)[number]['label']

/** The places of an account with several homes; pages that belong to none of them name the one they lead back to. */
export function HomesNav({ current }: { current: HomesPlace }) {
  return <PlaceNav places={PLACES.map((place) => ({ ...place, current: place.label === current }))} />
}
