'use client'

import { useActionState } from 'react'
import { saveStep } from '@/app/describe/actions'
import { DeviceFields } from '@/app/describe/fields/device-fields'
import { FilterFields } from '@/app/describe/fields/filter-fields'
import type { GroupProps } from '@/app/describe/fields/group'
import { PeopleFields } from '@/app/describe/fields/people-fields'
import { PlaceFields } from '@/app/describe/fields/place-fields'
import { SystemFields } from '@/app/describe/fields/system-fields'
import { FaultList } from '@/app/parts/fault-list'
import { NOT_SENT } from '@/lib/core/answer'
import type { Screen } from './screen'

interface StepFormProps {
  step: string
  /** `Screen 2 of 7`. */
  place: string
  screen: Screen
  hasBefore: boolean
  mayAdd: boolean
}

/** One screen: its questions, and the buttons that keep what was typed wherever they lead. */
export function StepForm({ step, place, screen, hasBefore, mayAdd }: StepFormProps) {
  const [answer, send, isSending] = useActionState(saveStep, NOT_SENT)
  const isRefused = answer.faults.length > 0
  const group = isRefused
    ? { typed: answer.typed, faults: answer.faults }
    : { typed: screen.typed, faults: screen.faults }
  return (
    <form action={send} noValidate>
      <p className="place">{place}</p>
      <h1>{screen.title}</h1>
      <p className="lead">{screen.lead}</p>
      {screen.follows && <p className="follows">What follows from the weather: {screen.follows}</p>}
      <FaultList faults={group.faults} />
      <input type="hidden" name="step" value={step} />
      {/* Enter in a field presses the first button of a form, and that must be this one. */}
      <button type="submit" name="button" value="next" className="first" tabIndex={-1} aria-hidden="true">
        Next
      </button>
      {/* A form that was answered is drawn anew, so that every field holds what was typed. */}
      <Questions key={JSON.stringify(group)} screen={screen} group={group} />
      <div className="buttons">
        <button type="submit" name="button" value="next" className="main" disabled={isSending}>
          Next
        </button>
        {mayAdd && (
          <button type="submit" name="button" value="another">
            {screen.kind === 'system' ? 'Next, and add another system' : 'Next, and add another filter'}
          </button>
        )}
        {hasBefore && (
          <button type="submit" name="button" value="back">
            Back
          </button>
        )}
        {'number' in screen && screen.number > 1 && (
          <button type="submit" name="button" value="remove">
            Leave this {screen.kind} out
          </button>
        )}
        <button type="submit" name="button" value="leave" className="quiet">
          Keep this and leave for now
        </button>
      </div>
    </form>
  )
}

function Questions({ screen, group }: { screen: Screen; group: GroupProps }) {
  switch (screen.kind) {
    case 'home':
      return <PlaceFields {...group} climates={screen.climates} />
    case 'people':
      return <PeopleFields {...group} />
    case 'system':
      return <SystemFields {...group} units={screen.units} withServices />
    case 'filter':
      return <FilterFields {...group} places={screen.places} sizeSaid={screen.sizeSaid} withChanged />
    case 'devices':
      return <DeviceFields {...group} tickable={screen.tickable} rows={screen.rows} />
  }
}
