import type { SentAnswer } from './sent-answer'
import { SendForm } from './sent-answer'

/** On every screen: one step to the hazard text. */
export function Escape({ sent }: { sent: SentAnswer }) {
  return (
    <div className="escape">
      <SendForm sent={sent}>
        <button type="submit" className="escape-tap">
          <strong>Something changed</strong> Gas smell, alarm, smoke, someone ill
        </button>
      </SendForm>
    </div>
  )
}
