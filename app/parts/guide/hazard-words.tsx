import { HAZARD_TEXTS } from '@/content/guide/hazards'
import { fillEmergency } from '@/lib/guide/export'
import type { Hazard, Section } from '@/lib/guide/types'
import { HazardText } from '../hazard-text'
import { TelLink } from './tel-link'

/** `DANGER. Gas smell. Stop. …` as the signal word with what it is, and the sentences of what to do. */
export function signalAndLines(text: string): { signal: string | null; lines: string[] } {
  const sentences = text.split(/(?<=[.?!:])\s+(?=[A-Z])/)
  const [first = text, ...rest] = sentences
  return /^(DANGER|WARNING)\.$/.test(first)
    ? { signal: first.slice(0, -1), lines: rest }
    : { signal: null, lines: sentences }
}

/** One hazard's words as the loudest thing of the page, with the number to call under the sentence that says when. */
export function HazardWords({ hazard, number, call }: { hazard: Hazard; number: string; call: boolean }) {
  const { title, text, sections } = HAZARD_TEXTS[hazard]
  return <EmergencyWords title={title} text={text} sections={sections} number={number} call={call} />
}

interface EmergencyWordsProps {
  title: string | null
  text: string
  sections: Section[]
  number: string
  level?: 1 | 2
  /** Whether the number can be tapped. Where several hazards stand together, only under the strictest sentence. */
  call?: boolean
}

export function EmergencyWords({ title, text, sections, number, level = 2, call = true }: EmergencyWordsProps) {
  const { signal, lines } = signalAndLines(fillEmergency(text, number))
  // The name of the hazard is the heading already.
  const said = title === null ? lines : lines.filter((line) => line !== `${title}.`)
  const where = sections.find(({ slot }) => slot === 'call')
  const heading = [signal ?? 'WARNING', title].filter((part) => part !== null).join(': ')
  return (
    <HazardText heading={heading} level={level} lines={[said.join(' ')]}>
      {where && (
        <>
          <p>{fillEmergency(where.text, number)}</p>
          {call && <TelLink phone={number} name={null} />}
        </>
      )}
    </HazardText>
  )
}
