import { FirstScreen } from '@/app/parts/guide/first-screen'
import { minuteNow } from './load-place'

/** A made-up address of the guide: it says so, under the hazards. */
export default function NotFound() {
  return (
    <>
      <p className="notice guide-notice" role="status">
        This address is no part of the guide. It begins here.
      </p>
      <FirstScreen next={`/check/trouble?at=${minuteNow()}`} number="911" />
    </>
  )
}
