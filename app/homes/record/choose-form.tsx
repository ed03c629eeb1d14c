import type { Day } from '@/lib/core/day'
import { TASKS, type Task } from '@/lib/core/household'
import { taskDoneInWords } from '@/lib/core/words'

interface ChooseFormProps {
  buildings: string[]
  building: string | null
  /** Those that something in the building asks for; all of them while no building is chosen. */
  tasks: Task[]
  task: Task | null
  on: Day | null
  today: Day
}

/** Which building, what and when: in the address, so that the list can be opened again. */
export function ChooseForm({ buildings, building, tasks, task, on, today }: ChooseFormProps) {
  // A filter is looked at one by one, for what is seen differs.
  const offered = TASKS.filter((each) => each !== 'look-at-filter' && (tasks.length === 0 || tasks.includes(each)))
  return (
    <form action="/homes/record">
      <p className="lead">You see the list first; nothing is recorded before you say so.</p>
      <div className="field">
        <label className="label" htmlFor="building">
          Building
        </label>
        <select id="building" name="building" defaultValue={building ?? ''}>
          {buildings.map((name) => (
            <option key={name}>{name}</option>
          ))}
        </select>
      </div>
      <div className="field">
        <label className="label" htmlFor="task">
          What was done
        </label>
        <select id="task" name="task" defaultValue={task ?? offered[0]}>
          {offered.map((each) => (
            <option key={each} value={each}>
              {taskDoneInWords(each)}
            </option>
          ))}
        </select>
      </div>
      <div className="field">
        <label className="label" htmlFor="on">
          On
        </label>
        <input
          id="on"
          name="on"
          type="date"
          defaultValue={on !== null && on <= today ? on : today}
          max={today}
          required
        />
      </div>
      <button type="submit" className="main">
        Show the list
      </button>
    </form>
  )
}
