'use client'

import { type ChangeEvent, useState } from 'react'
import { smallerPicture } from '@/app/find/smaller-picture'
import { ChoiceRows } from '@/app/parts/choice-rows'

interface PhotoFormProps {
  household: string
  choices: { value: string; label: string }[]
  chosen?: string | undefined
}

const LONGEST_SIDE_PX = 1600

/**
 * Sends one photo by a plain form. Where scripts run it is made smaller on the phone first, which also leaves the
 * place where it was taken behind; the server does both again.
 */
export function PhotoForm({ household, choices, chosen }: PhotoFormProps) {
  const [state, setState] = useState<'idle' | 'working' | 'smaller'>('idle')
  async function shrink({ currentTarget: input }: ChangeEvent<HTMLInputElement>) {
    const file = input.files?.[0]
    if (!file) return
    setState('working')
    const smaller = await smallerPicture(file, LONGEST_SIDE_PX)
    if (smaller) {
      const list = new DataTransfer()
      list.items.add(new File([smaller], 'photo.jpg', { type: 'image/jpeg' }))
      input.files = list.files
    }
    setState(smaller ? 'smaller' : 'idle')
  }
  return (
    <form action={`/home/${household}/photos/add`} method="post" encType="multipart/form-data">
      <ChoiceRows name="about" legend="What does it show?" choices={choices} chosen={chosen} required />
      <div className="field">
        <label className="label" htmlFor="photo">
          The photo
        </label>
        <p className="hint" id="photo-hint">
          JPEG, PNG, WebP or AVIF, up to 12 MB. The place and time in the file are removed. Show no people.
        </p>
        <input
          id="photo"
          name="photo"
          type="file"
          accept="image/jpeg,image/png,image/webp,image/avif"
          required
          aria-describedby="photo-hint"
          onChange={shrink}
        />
        <p role="status">
          {state === 'working' && 'Making it smaller…'}
          {state === 'smaller' && 'Made smaller on this phone, without the place where it was taken.'}
        </p>
      </div>
      <button type="submit" className="main" disabled={state === 'working'}>
        Keep the photo
      </button>
    </form>
  )
}
