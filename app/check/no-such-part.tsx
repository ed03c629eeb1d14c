import { FirstScreen } from '@/app/parts/guide/first-screen'
import { emergencyNumber, type GuidePlace, guideBase } from '@/lib/guide/place'

/** A made-up address of the guide: it says so, under the hazards, and without scripts too. */
export function NoSuchPart({ place }: { place: GuidePlace }) {
  const next = `${guideBase(place.home?.id ?? null)}/trouble?at=${place.now}`
  return (
    <FirstScreen next={next} number={emergencyNumber(place)}>
      <p className="notice" role="status">
        This address is no part of the guide. It begins here.
      </p>
    </FirstScreen>
  )
}
