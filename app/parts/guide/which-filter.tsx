import type { Walk } from '@/lib/guide/address'
import { type GuidePlace, walkHref } from '@/lib/guide/place'
import type { GuideNode } from '@/lib/guide/types'
import { ALL_FILTERS, candidateFilters, lightOfAnswer } from '@/lib/guide/which-filter'
import { SendForm } from './sent-answer'

/** Whether an answer about a filter leaves open which one it was. */
export function asksWhichFilter(place: GuidePlace, node: GuideNode, answer: string): boolean {
  return node.action === 'filter' && lightOfAnswer(answer) !== null && candidateFilters(place).length > 1
}

/** The same screen of the walk, with what was said about a filter. */
export function whichFilterHref(place: GuidePlace, walk: Walk, answer: string): string {
  return `${walkHref(place, walk)}&said=${answer}`
}

interface WhichFilterProps {
  place: GuidePlace
  walk: Walk
  node: GuideNode
  /** What was said of it. */
  answer: string
}

/** Asks which of several filters was meant: it stands in the log from then on, and its dates move. */
export function WhichFilter({ place, walk, node, answer }: WhichFilterProps) {
  const sent = { place, walk, node, answer }
  const choices = [
    ...candidateFilters(place).map(({ id, name }) => ({ id, text: `The one in the ${name}` })),
    { id: ALL_FILTERS, text: 'All of them: they were alike' },
  ]
  return (
    <>
      <h1>Which filter was it?</h1>
      <p className="lead">“{node.answers?.find(({ id }) => id === answer)?.text}.” It goes into the log of the home.</p>
      <ul className="taps">
        {choices.map(({ id, text }) => (
          <li key={id}>
            <SendForm sent={sent} more={{ filter: id }}>
              <button type="submit" className="tap">
                {text}
              </button>
            </SendForm>
          </li>
        ))}
        <li>
          <SendForm sent={sent} more={{ filter: 'unknown' }}>
            <button type="submit" className="tap">
              I can not tell: write nothing down
            </button>
          </SendForm>
        </li>
      </ul>
    </>
  )
}
