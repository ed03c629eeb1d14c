import { fillEmergency } from '@/lib/guide/export'
import type { GuideNode } from '@/lib/guide/types'
import { HazardText } from '../hazard-text'
import { CHECK_LINES } from './check-lines'
import { signalAndLines } from './hazard-words'

/** The words of a question, a look, a check or a wait. */
export function NodeWords({ node, number }: { node: GuideNode; number: string }) {
  const text = fillEmergency(node.text, number)
  if (node.kind === 'check') return <CheckWords text={text} turnsOn={node.turnsOn === true} />
  const { signal, lines } = signalAndLines(text)
  if (signal !== null) return <HazardText level={1} heading={signal} lines={lines} />
  const [first, ...rest] = lines
  return (
    <>
      <h1>{first}</h1>
      {rest.length > 0 && <p className="lead">{rest.join(' ')}</p>}
    </>
  )
}

function CheckWords({ text, turnsOn }: { text: string; turnsOn: boolean }) {
  const rows = text.split('\n').map((line) => {
    const colon = line.indexOf(': ')
    return [line.slice(0, colon), line.slice(colon + 2)] as const
  })
  const task = rows.find(([name]) => name === 'Do')?.[1] ?? text
  const before = rows.find(([name]) => name === 'Only if')
  const [first = task, ...rest] = task.split(/(?<=[.?!])\s+/)
  return (
    <>
      {turnsOn && <p className="one-start">The one start</p>}
      {before && (
        <p className="only-if">
          <strong>Only if</strong> {before[1]}
        </p>
      )}
      <h1>{first}</h1>
      {rest.length > 0 && <p className="lead">{rest.join(' ')}</p>}
      <dl className="facts check-facts">
        {rows
          .filter(([name]) => name !== 'Do' && name !== 'Only if')
          .map(([name, said]) => (
            <div key={name}>
              <dt>{CHECK_LINES[name] ?? name}</dt>
              <dd>{said}</dd>
            </div>
          ))}
      </dl>
    </>
  )
}
