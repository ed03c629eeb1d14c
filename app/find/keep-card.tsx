'use client'

import Link from 'next/link'
import { useEffect, useState } from 'react'
import type { TypedSize } from '@/lib/forms/size-form'
import { keepCard } from './kept-cards'

interface KeepCardProps {
  answers: string
  typed: TypedSize | null
  /** The size as it will stand on the card; null while it is not known. */
  size: string | null
}

/** Keeps the card on this phone. Needs scripts: without them there is nowhere on the phone to keep it. */
export function KeepCard({ answers, typed, size }: KeepCardProps) {
  const [state, setState] = useState<'none' | 'ready' | 'failed' | string>('none')
  const card = JSON.stringify({ answers, typed: size === null ? null : typed })
  useEffect(() => setState('ready'), [])
  if (state === 'none') return null
  if (state === card) {
    return (
      <p role="status">
        Kept on this phone. <Link href="/find/kept">See the cards kept here</Link>
      </p>
    )
  }
  return (
    <>
      <button
        type="button"
        className="main"
        onClick={() => setState(keepCard(window.localStorage, JSON.parse(card)) ? card : 'failed')}
      >
        Keep it on this phone
      </button>
      {state === 'failed' && (
        <p role="alert">This phone does not let us keep anything. Print the card, or take a picture of the screen.</p>
      )}
    </>
  )
}
