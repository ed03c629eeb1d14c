import { parseWalk, type Walk, withoutLast } from '@/lib/guide/address'
import { emergencyNumber, type GuidePlace, guideBase, replayIn, walkHref } from '@/lib/guide/place'
import type { Answer, Flow, GuideNode } from '@/lib/guide/types'
import { Answers } from './answers'
import { Escape } from './escape'
import { NodeWords } from './node-words'
import { OutcomeScreen } from './outcome-screen'
import { changedAnswer } from './sent-answer'
import { WaitLeft } from './wait-left'
import { asksWhichFilter, WhichFilter } from './which-filter'

interface GuideScreenProps {
  flow: Flow
  /** The question part of the address, with its `?`; empty: the walk begins now. */
  search: string
  place: GuidePlace
  /** Whether what was just answered could not be written down. */
  unsaved?: boolean
}

/** One screen of the guide, from its address alone: the same on the server and on a phone without network. */
export function GuideScreen({ flow, search, place, unsaved = false }: GuideScreenProps) {
  const begun: Walk = { flow: flow.id, startedAt: place.now, steps: [] }
  const isBegin = !/[?&](flow|at|s|n)=/.test(search)
  const parsed = isBegin ? ({ kind: 'walk', walk: begun } as const) : parseWalk(search)
  const given = parsed.kind === 'walk' ? parsed.walk : begun
  const found =
    parsed.kind === 'broken'
      ? { ...replayIn(place, flow, begun), kind: 'broken' as const, because: parsed.because }
      : replayIn(place, flow, given)
  const walk = found.kind === 'broken' ? begun : given
  const { node, answers } = found
  const said = new URLSearchParams(search).get('said')

  if (found.kind === 'at' && node.kind === 'outcome')
    return (
      <>
        <OutcomeScreen place={place} walk={walk} node={node} marks={found.marks} />
        {node.severity !== 3 && (
          <GuideFoot>
            <Escape sent={changedAnswer(place, walk, node)} />
            <BackLinks place={place} walk={walk} />
          </GuideFoot>
        )}
      </>
    )
  return (
    <>
      <main id="main" tabIndex={-1} className="guide">
        {found.kind === 'broken' && (
          <p className="notice" role="status">
            {found.because} So it begins again here, at the hazards.
          </p>
        )}
        {unsaved && (
          <p className="notice" role="status">
            This could not be written down. Remember it, and tell the others at home.
          </p>
        )}
        {found.kind === 'hazards-again' && (
          <p className="notice">
            Some time has gone by, so a few questions come again: {found.left} to go. Then you are back where you were.
          </p>
        )}
        <p className="flow-name">{place.home ? `${flow.title} · ${placeName(place)}` : flow.title}</p>
        {said !== null && found.kind === 'at' && asksWhichFilter(place, node, said) ? (
          <WhichFilter place={place} walk={walk} node={node} answer={said} />
        ) : (
          <Asked place={place} walk={walk} node={node} answers={answers} />
        )}
      </main>
      <GuideFoot>
        <Escape sent={changedAnswer(place, walk, node)} />
        <BackLinks place={place} walk={walk} />
      </GuideFoot>
    </>
  )
}

interface AskedProps {
  place: GuidePlace
  walk: Walk
  node: GuideNode
  answers: readonly Answer[]
}

/** The words of a node and its answers; a wait has none until its time is over. */
function Asked({ place, walk, node, answers }: AskedProps) {
  const taps = <Answers place={place} walk={walk} node={node} answers={answers} />
  return (
    <>
      <NodeWords node={node} number={emergencyNumber(place)} />
      {node.kind === 'wait' ? (
        <WaitLeft
          until={walk.startedAt + (walk.steps.at(-1)?.minute ?? 0) + (node.minutes ?? 0)}
          now={place.now}
          here={walkHref(place, walk)}
        >
          {taps}
        </WaitLeft>
      ) : (
        taps
      )}
    </>
  )
}

function placeName({ home, systemId }: GuidePlace): string {
  const system = home?.profile.systems.find(({ id }) => id === systemId)
  return [home?.name, system?.name].filter(Boolean).join(', ')
}

function GuideFoot({ children }: { children: React.ReactNode }) {
  return (
    <section className="guide-foot no-print" aria-label="Ways out">
      {children}
    </section>
  )
}

function BackLinks({ place, walk }: { place: GuidePlace; walk: Walk }) {
  const base = guideBase(place.home?.id ?? null)
  return (
    <nav className="guide-ways" aria-label="The guide">
      {walk.steps.length > 0 && <a href={walkHref(place, withoutLast(walk))}>Back one answer</a>}
      <a href={base}>Start again</a>
      <a href={place.home ? `/home/${place.home.id}` : '/'}>Leave the guide</a>
    </nav>
  )
}
