import { SelectField } from '@/app/parts/select-field'
import type { Household } from '@/lib/core/household'
import { RUNS } from '@/lib/core/run-rows'
import { type ExportChoices, MEANINGS } from '@/lib/forms/thermostat/choices'
import type { Role } from '@/lib/forms/thermostat/columns'
import type { Brought } from './read-brought'

interface ChoicesFormProps {
  id: string
  upload: string
  brought: Brought
  home: Household
  choices: ExportChoices
}

const UNITS: [string, string][] = [
  ['s', 'seconds'],
  ['min', 'minutes'],
  ['h', 'hours'],
  ['pct', 'percent of the time'],
  ['flag', 'on or off'],
]
const RUN_NAMES = { heat: 'Heating', cool: 'Cooling', fan: 'Fan' } as const
const MEANING_NAMES: Record<string, string> = {
  off: 'nothing ran',
  heat: 'heating',
  cool: 'cooling',
  fan: 'the fan alone',
  'heat-cool': 'heating and cooling',
  unknown: 'unknown',
}

/** How the file is read, to be put right: a plain form whose answer is the same page with another address. */
export function ChoicesForm({ id, upload, brought, home, choices }: ChoicesFormProps) {
  const { head, understood, system } = brought
  return (
    <section aria-labelledby="choices">
      <h2 id="choices">Read it otherwise</h2>
      <p>What was guessed from the headings and the first rows. Change what is wrong and look again.</p>
      <form className="choices" method="get" action={`/home/${id}/measured/${upload}`}>
        <input type="hidden" name="columns" value={head.headings.length} />
        {home.systems.length > 1 && (
          <SelectField id="system" label="Which system was measured?" defaultValue={system.id}>
            {home.systems.map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}
              </option>
            ))}
          </SelectField>
        )}
        <h3>The columns</h3>
        {head.headings.map((heading, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two columns may have one heading; their place is what they are.
          <ColumnChoice key={`${i} ${heading}`} at={i} role={understood.roles[i] ?? ''} {...{ head, heading }} />
        ))}
        <Words understood={understood} />
        <h3>Day and time</h3>
        <SelectField
          id="order"
          label="The order of the date, where the year stands last"
          hint={understood.isOrderGuessed ? 'The file allows both: the shorter span was taken.' : undefined}
          defaultValue={choices.order ?? understood.order}
        >
          <option value="month-first">month, day, year</option>
          <option value="day-first">day, month, year</option>
        </SelectField>
        <SelectField
          id="zone"
          label="The clock of the file"
          hint="An offset or a zone that stands in a row itself goes before this."
          defaultValue={choices.zone}
        >
          <option value="home">this home’s ({home.timeZone})</option>
          <option value="utc">UTC</option>
        </SelectField>
        {RUNS.filter((run) => understood.together[run] !== undefined).map((run) => (
          <SelectField
            key={run}
            id={`together-${run}`}
            label={`Several columns of ${RUN_NAMES[run].toLowerCase()}`}
            hint="Stages mostly run at the same time; extra heat that takes over from the first runs in turn."
            defaultValue={understood.together[run]}
          >
            <option value="longest">run at the same time: the longest counts</option>
            <option value="added">run in turn: they are added</option>
          </SelectField>
        ))}
        {understood.roles.some((role) => role.startsWith('fan-')) && (
          <SelectField id="fan" label="The fan’s column" defaultValue={choices.fan}>
            <option value="auto">find out from the figures</option>
            <option value="all">has every hour that it ran</option>
            <option value="alone">has only the hours without heating and cooling</option>
          </SelectField>
        )}
        <button type="submit">Look again</button>
      </form>
    </section>
  )
}

function ColumnChoice({ at, heading, role, head }: { at: number; heading: string; role: Role; head: Brought['head'] }) {
  const samples = [...new Set(head.rows.flatMap((row) => row[at]?.trim() || []))].slice(0, 3).join(' · ')
  return (
    <SelectField
      id={`c${at}`}
      label={heading || `Column ${at + 1}`}
      hint={samples.slice(0, 90) || 'empty'}
      defaultValue={role}
    >
      <option value="">pass it over</option>
      <option value="time">Day and time</option>
      <option value="clock">Time of day, beside a day</option>
      <option value="state">Words that say what it was doing</option>
      {RUNS.map((run) => (
        <optgroup key={run} label={RUN_NAMES[run]}>
          {UNITS.map(([unit, name]) => (
            <option key={unit} value={`${run}-${unit}`}>
              {RUN_NAMES[run]}, {name}
            </option>
          ))}
        </optgroup>
      ))}
    </SelectField>
  )
}

function Words({ understood: { words } }: { understood: Brought['understood'] }) {
  if (words.length === 0) return null
  return (
    <>
      <h3>What the words mean</h3>
      {words.map(({ word, means, count }, i) => (
        <div key={word}>
          <input type="hidden" name={`w${i}`} value={word} />
          <SelectField
            id={`m${i}`}
            label={word === '' ? 'an empty cell' : `“${word}”`}
            hint={`${count.toLocaleString('en-US')} times`}
            defaultValue={MEANINGS.find(([, bits]) => bits === means)?.[0] ?? 'unknown'}
          >
            {MEANINGS.map(([name]) => (
              <option key={name} value={name}>
                {MEANING_NAMES[name]}
              </option>
            ))}
          </SelectField>
        </div>
      ))}
    </>
  )
}
