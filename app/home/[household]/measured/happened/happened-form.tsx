'use client'

import { useActionState } from 'react'
import { choiceOf, fieldOf } from '@/app/describe/fields/group'
import { ChoiceRows } from '@/app/parts/choice-rows'
import { FaultList } from '@/app/parts/fault-list'
import { TextField } from '@/app/parts/text-field'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import { keepHappened } from './actions'

const CHOICES = [
  { value: 'smoke', label: 'Wildfire smoke', hint: 'Counts twice the usual dust.' },
  { value: 'renovation', label: 'Building work', hint: 'Counts three times.' },
  { value: 'dust', label: 'Dust or pollen', hint: 'Counts a third more.' },
  { value: 'hot', label: 'A heat wave', hint: 'Cooling runs as long as its temperature asks.' },
  { value: 'cold', label: 'A cold spell', hint: 'Heating runs as long as its temperature asks.' },
]

/** One press: it is saved, and the page says what moved. */
export function HappenedForm({ household, degrees }: { household: string; degrees: string }) {
  const [answer, send, isSending] = useActionState<Answer, FormData>(keepHappened, NOT_SENT)
  const group = { typed: answer.typed, faults: answer.faults }
  return (
    <form action={send} noValidate>
      <FaultList faults={answer.faults} />
      <input type="hidden" name="household" value={household} />
      <div key={JSON.stringify(answer.typed)}>
        <ChoiceRows name="what" legend="What happened?" choices={CHOICES} {...choiceOf(group, 'what')} />
        <div className="inline">
          <TextField id="from" label="From, this day included" type="date" {...fieldOf(group, 'from')} />
          <TextField id="to" label="to, this day included" type="date" {...fieldOf(group, 'to')} />
        </div>
        <fieldset aria-describedby="how-hint" className="ask-degrees">
          <legend>How hot, or how cold</legend>
          <p className="hint" id="how-hint">
            On a usual one of these days. Only for a heat wave or a cold spell.
          </p>
          <div className="inline">
            <TextField
              id="high"
              label={`High of the day, ${degrees}`}
              inputMode="decimal"
              className="short"
              {...fieldOf(group, 'high')}
            />
            <TextField
              id="low"
              label={`Low of the night, ${degrees}`}
              inputMode="decimal"
              className="short"
              {...fieldOf(group, 'low')}
            />
          </div>
        </fieldset>
      </div>
      <button type="submit" className="main" disabled={isSending}>
        Save
      </button>
    </form>
  )
}
