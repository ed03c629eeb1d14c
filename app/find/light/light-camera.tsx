'use client'

import { type ChangeEvent, useEffect, useState } from 'react'
import { ChoiceRows } from '@/app/parts/choice-rows'
import { LIGHT_PICTURE } from '@/content/light-picture'
import { type LightReading, type LightReference, readLightPicture } from '@/lib/core/light-picture'
import type { Picture } from '@/lib/core/linear-light'
import { lightInWords } from '@/lib/core/words'

const LONGEST_SIDE_PX = 1200

type Shown = LightReading | 'idle' | 'working' | 'unreadable'

/** Compares two filters in one picture. The picture is read on the phone and goes nowhere. */
export function LightCamera() {
  const [isReady, setReady] = useState(false)
  const [reference, setReference] = useState<LightReference>('new-filter')
  const [side, setSide] = useState<'left' | 'right'>('left')
  const [picture, setPicture] = useState<Picture | null>(null)
  const [shown, setShown] = useState<Shown>('idle')
  useEffect(() => setReady(true), [])
  if (!isReady) return null

  async function take(event: ChangeEvent<HTMLInputElement>) {
    const file = event.currentTarget.files?.[0]
    if (!file) return
    setShown('working')
    const taken = await pictureOf(file)
    setPicture(taken)
    setShown(taken ? readLightPicture(taken, { reference, side }, LIGHT_PICTURE) : 'unreadable')
  }

  function again(question: { reference: LightReference; side: 'left' | 'right' }) {
    setReference(question.reference)
    setSide(question.side)
    if (picture) setShown(readLightPicture(picture, question, LIGHT_PICTURE))
  }

  return (
    <section aria-labelledby="camera" className="no-print">
      <h2 id="camera">Let the camera compare</h2>
      <p className="find-line">
        Stand your filter and a new one side by side, a hand’s width apart, before one lamp. Darken the room. Put the
        lamp behind the gap. Rest the phone on something, and take one picture of both. It stays on this phone.
      </p>
      <div
        onChange={(event) => {
          const { name, value } = event.target as unknown as HTMLInputElement
          if (name === 'reference') again({ reference: value as LightReference, side })
          if (name === 'side') again({ reference, side: value as 'left' | 'right' })
        }}
      >
        <ChoiceRows
          name="side"
          legend="Where is your filter in the picture?"
          choices={[
            { value: 'left', label: 'On the left' },
            { value: 'right', label: 'On the right' },
          ]}
          chosen="left"
        />
        <ChoiceRows
          name="reference"
          legend="What is beside it?"
          choices={[
            { value: 'new-filter', label: 'A new filter of the same kind' },
            { value: 'paper', label: 'One sheet of plain white paper', hint: 'Less sure: papers differ.' },
          ]}
          chosen="new-filter"
        />
      </div>
      <div className="field">
        <label className="label" htmlFor="light-photo">
          The picture
        </label>
        <input id="light-photo" type="file" accept="image/*" capture="environment" onChange={take} />
      </div>
      <div role="status">
        <Result shown={shown} />
      </div>
    </section>
  )
}

function Result({ shown }: { shown: Shown }) {
  if (shown === 'idle') return null
  if (shown === 'working') return <p>Looking…</p>
  if (shown === 'unreadable') return <p className="notice">This is no picture that the phone can read. Take another.</p>
  if (shown.kind === 'refused') {
    return (
      <div className="faults">
        <h2>This picture cannot tell</h2>
        <ul>
          {shown.faults.map(({ code, say }) => (
            <li key={code}>{say}</li>
          ))}
        </ul>
        <p>Or judge by eye with the drawings above.</p>
      </div>
    )
  }
  return (
    <div className="notice">
      <p className="light-answer">{lightInWords(shown.light)}</p>
      <p>
        {shown.say} How sure: {Math.min(99, Math.round(shown.sureness * 100))} %.
      </p>
      <p>The picture is an aid. What your own eyes see counts more, and so does a filter that is torn or wet.</p>
    </div>
  )
}

/** The file as pixels, at most 1200 a side, or null where it is no picture. */
async function pictureOf(file: File): Promise<Picture | null> {
  try {
    const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' })
    const scale = Math.min(1, LONGEST_SIDE_PX / Math.max(bitmap.width, bitmap.height))
    const [width, height] = [
      Math.max(1, Math.round(bitmap.width * scale)),
      Math.max(1, Math.round(bitmap.height * scale)),
    ]
    const canvas = document.createElement('canvas')
    Object.assign(canvas, { width, height })
    const context = canvas.getContext('2d', { willReadFrequently: true })
    if (!context) return null
    context.drawImage(bitmap, 0, 0, width, height)
    bitmap.close()
    return { width, height, rgba: context.getImageData(0, 0, width, height).data }
  } catch {
    return null
  }
}
