import type { Walk } from '@/lib/guide/address'
import { beginsWalk, eventKinds } from '@/lib/guide/booking'
import type { GuidePlace } from '@/lib/guide/place'
import type { Answer, GuideNode } from '@/lib/guide/types'
import { answerHref, SendForm } from './sent-answer'
import { asksWhichFilter, whichFilterHref } from './which-filter'

interface AnswersProps {
  place: GuidePlace
  walk: Walk
  node: GuideNode
  answers: readonly Answer[]
}

/** The answers as large rows; what is only printed stands first, since it must be read before anything is tapped. */
export function Answers({ place, walk, node, answers }: AnswersProps) {
  const printed = answers.filter(({ as }) => as === 'text')
  const taps = answers.filter(({ as }) => as === 'button')
  return (
    <>
      {printed.length > 0 && (
        <ul className="printed loud">
          {printed.map(({ id, text }) => (
            <li key={id}>{text}</li>
          ))}
        </ul>
      )}
      <ul className="taps">
        {taps.map((answer) => {
          const sent = { place, walk, node, answer: answer.id }
          const inHome = place.home !== null && (node.action === 'filter' || beginsWalk(walk, answer))
          const writes = eventKinds(node, answer).length > 0 || inHome
          if (asksWhichFilter(place, node, answer.id))
            return (
              <li key={answer.id}>
                <a className="tap" href={whichFilterHref(place, walk, answer.id)}>
                  {answer.text}
                </a>
              </li>
            )
          return (
            <li key={answer.id}>
              {writes ? (
                <SendForm sent={sent}>
                  <button type="submit" className="tap">
                    {answer.text}
                  </button>
                </SendForm>
              ) : (
                <a className="tap" href={answerHref(sent)}>
                  {answer.text}
                </a>
              )}
            </li>
          )
        })}
      </ul>
    </>
  )
}
