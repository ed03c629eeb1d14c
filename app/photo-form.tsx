'use client'

import { type ChangeEvent, useState } from 'react'
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
    const smaller = await smallerOf(file)
    if (smaller) {
      const list = new DataTransfer()
      list.items.add(smaller)
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

/** The same picture, at most 1600 pixels a side, or null where this browser cannot draw it: the server then judges. */
async function smallerOf(file: File): Promise<File | null> {
  try {
    const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' })
    const scale = Math.min(1, LONGEST_SIDE_PX / Math.max(bitmap.width, bitmap.height))
    const canvas = document.createElement('canvas')
    canvas.width = Math.max(1, Math.round(bitmap.width * scale))
    canvas.height = Math.max(1, Math.round(bitmap.height * scale))
    canvas.getContext('2d')?.drawImage(bitmap, 0, 0, canvas.width, canvas.height)
    bitmap.close()
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', 0.85))
    return blob && new File([blob], 'photo.jpg', { type: 'image/jpeg' })
  } catch {
    return null
  }
}
