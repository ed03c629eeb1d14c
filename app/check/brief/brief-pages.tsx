'use client'

import { useEffect, useState } from 'react'
import { BriefSheet } from '@/app/parts/guide/brief-sheet'
import { CopyAndPrint } from '@/app/parts/guide/copy-text'
import { type Brief, briefText } from '@/lib/guide/brief'
import { minuteInWords } from './minute-words'

interface BriefPagesProps {
  brief: Brief
  /** When the walk began, where its words are to be the phone's own; null: they are the home's already. */
  phoneMinute: number | null
}

/**
 * The brief and what copies it. Without scripts nobody knows the phone's clock: the time is in UTC then, and says so;
 * with them it is put into the phone's own words.
 */
export function BriefPages({ brief, phoneMinute }: BriefPagesProps) {
  const [isHydrated, setHydrated] = useState(false)
  useEffect(() => setHydrated(true), [])
  const shown = isHydrated && phoneMinute !== null ? inPhoneTime(brief, phoneMinute) : brief
  return (
    <>
      <BriefSheet brief={shown} />
      <CopyAndPrint text={briefText(shown)} />
    </>
  )
}

function inPhoneTime(brief: Brief, minute: number): Brief {
  const { timeZone } = Intl.DateTimeFormat().resolvedOptions()
  const [utc, own] = [minuteInWords(minute, 'UTC'), minuteInWords(minute, timeZone)]
  const sections = brief.sections.map(({ heading, lines }) => ({
    heading,
    lines: lines.map((line) => line.replace(utc, own)),
  }))
  return { ...brief, sections }
}
