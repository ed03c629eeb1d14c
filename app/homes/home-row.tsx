import Link from 'next/link'
import { StateSign } from '@/app/parts/state-sign'
import type { Unit } from '@/app/units'
import { awayInWords } from '@/lib/core/day-words'
import { stateInWords, taskInWords } from '@/lib/core/words'

/** One home in a list, on one line where there is room: its name, and the one thing there that presses most. */
export function HomeRow({ unit, withBuilding }: { unit: Unit; withBuilding: boolean }) {
  return (
    <li className={unit.pressing?.state === 'overdue' ? 'home-row overdue' : 'home-row'}>
      <Link href={`/home/${unit.id}`} prefetch={false}>
        {unit.name}
        {unit.building !== null && <span className="visually-hidden">, {unit.building}</span>}
      </Link>
      {withBuilding && unit.building !== null && <span className="home-building">{unit.building}</span>}
      <Pressing unit={unit} />
    </li>
  )
}

function Pressing({ unit: { state, pressing, subject, on } }: { unit: Unit }) {
  if (state === 'closed') return <span className="home-first">Closed: kept to be read, nothing is due.</span>
  if (!pressing) return <span className="home-first">Nothing is due.</span>
  return (
    <span className="home-first">
      <StateSign state={pressing.state} />
      <span>
        <strong>{stateInWords(pressing.state)}:</strong> {lowerFirst(taskInWords(pressing.task))}, {subject},{' '}
        {awayInWords(pressing.due, on)}
      </span>
    </span>
  )
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1)
}
