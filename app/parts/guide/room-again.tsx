import type { Walk } from '@/lib/guide/address'
import { InCelsius, WalkFields } from './outcome-screen'

interface RoomAgainProps {
  walk: Walk
  systemId: string | null
  action: string
  typed: string
  /** It was asked in °C. */
  isMetric: boolean
  watched: string
  fault: string
}

/** The temperature was no temperature: it is asked again, with what was typed. */
export function RoomAgain({ walk, systemId, action, typed, isMetric, watched, fault }: RoomAgainProps) {
  return (
    <form method="get" action={action} className="no-print">
      <WalkFields place={{ systemId }} walk={walk} />
      {watched !== '' && <input type="hidden" name="w" value={watched} />}
      <div className="field">
        <label className="label" htmlFor="room">
          How warm is the room, in {isMetric ? '°C' : '°F'}?
        </label>
        {isMetric && <InCelsius />}
        <span className="fault" id="room-fault">
          {fault}
        </span>
        <input
          className="short"
          id="room"
          name="room"
          defaultValue={typed}
          inputMode="decimal"
          autoComplete="off"
          aria-invalid
          aria-describedby="room-fault"
        />
      </div>
      <button type="submit">Make the brief again</button>
    </form>
  )
}
