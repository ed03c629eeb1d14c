import { HAZARD_TEXTS } from '@/content/guide/hazards'
import { encodeWalk, type Walk } from '@/lib/guide/address'
import { fillEmergency } from '@/lib/guide/export'
import { emergencyNumber, type GuideContact, type GuidePlace, guideBase } from '@/lib/guide/place'
import type { GuideNode, Marks, Slot } from '@/lib/guide/types'
import { listSections } from '@/lib/guide/walk'
import { HazardText } from '../hazard-text'
import { EmergencyWords, signalAndLines } from './hazard-words'
import { TelLink } from './tel-link'

const HEADINGS: Record<Slot, string> = {
  call: 'Whom to call',
  say: 'What to say',
  dont: 'Leave alone',
  watch: 'It gets urgent if',
  meanwhile: 'Until then',
  tenant: 'If you rent',
}

// An emergency is as urgent as can be, and its wait is for the crew.
const IN_EMERGENCY: Partial<Record<Slot, string>> = { watch: 'Keep in mind', meanwhile: 'While you wait' }

function headingOf(slot: Slot, { isEmergency, isLet }: { isEmergency: boolean; isLet: boolean }): string {
  if (slot === 'tenant' && isLet) return 'If you let it'
  return (isEmergency && IN_EMERGENCY[slot]) || HEADINGS[slot]
}

const URGENCY = ['No visit needed now', 'A visit in the next days', 'Today', 'Now'] as const

interface OutcomeProps {
  place: GuidePlace
  walk: Walk
  node: GuideNode
  marks: Marks
}

/** Where a walk ends. An emergency has no way on: no link, no form, nothing to tap but the number. */
export function OutcomeScreen({ place, walk, node, marks }: OutcomeProps) {
  const number = emergencyNumber(place)
  const sections = listSections(node, marks)
  const isEmergency = node.severity === 3
  const title = Object.values(HAZARD_TEXTS).find(({ id }) => id === node.id)?.title ?? null
  const { signal, lines } = signalAndLines(fillEmergency(node.text, number))
  const [first, ...rest] = lines
  return (
    <main id="main" tabIndex={-1} className="guide" data-emergency={isEmergency || undefined}>
      {isEmergency ? (
        <EmergencyWords level={1} title={title} text={node.text} sections={sections} number={number} />
      ) : (
        <>
          {node.severity !== undefined && <p className="urgency">{URGENCY[node.severity]}</p>}
          {signal === null ? (
            <>
              <h1>{first}</h1>
              {rest.length > 0 && <p className="lead">{rest.join(' ')}</p>}
            </>
          ) : (
            <HazardText
              level={1}
              heading={[signal, title].filter((part) => part !== null).join(': ')}
              lines={[lines.join(' ')]}
            />
          )}
        </>
      )}
      {sections.map((section) =>
        isEmergency && section.slot === 'call' ? null : (
          <section key={section.slot}>
            <h2>{headingOf(section.slot, { isEmergency, isLet: marks.tenure === 'let' })}</h2>
            <p>{fillEmergency(section.text, number)}</p>
            {section.slot === 'call' && <Contacts contacts={place.home?.contacts ?? []} marks={marks} />}
          </section>
        ),
      )}
      {!isEmergency && <BriefForm place={place} walk={walk} />}
    </main>
  )
}

const CALLED: Record<GuideContact['kind'], string> = {
  technician: 'your technician',
  landlord: 'your landlord',
  'gas-company': 'the gas company',
  other: 'your contact',
}

/** The household's own people for what is not an emergency: the technician first. */
function Contacts({ contacts, marks }: { contacts: GuideContact[]; marks: Marks }) {
  const order: GuideContact['kind'][] =
    marks.tenure === 'rent' ? ['landlord', 'technician'] : ['technician', 'landlord']
  const known = order.flatMap((kind) => contacts.filter((contact) => contact.kind === kind && contact.phone))
  return known.map(({ kind, name, phone }) => (
    <TelLink key={`${kind} ${phone}`} name={name ?? CALLED[kind]} phone={phone ?? ''} />
  ))
}

/** Asks for the one figure that a technician wants and the walk does not have. */
function BriefForm({ place, walk }: { place: GuidePlace; walk: Walk }) {
  const base = guideBase(place.home?.id ?? null)
  const isMetric = place.home?.units === 'metric'
  return (
    <section aria-labelledby="brief" className="no-print">
      <h2 id="brief">The brief</h2>
      <p>One page for the technician: what you saw, with times, and what was tried. To read out, print or send.</p>
      <form method="get" action={`${base}/brief`}>
        <WalkFields place={place} walk={walk} />
        <div className="field">
          <label className="label" htmlFor="room">
            How warm is the room, in {isMetric ? '°C' : '°F'}? You may leave it empty.
          </label>
          {isMetric && <InCelsius />}
          <input className="short" id="room" name="room" inputMode="decimal" autoComplete="off" />
        </div>
        <button type="submit" className="main">
          Make the brief
        </button>
      </form>
      <p className="after-form">
        <a href={`${base}/watch${encodeWalk(walk)}${place.systemId ? `&system=${place.systemId}` : ''}`}>
          Does it try to start by itself? Time what you hear
        </a>
      </p>
    </section>
  )
}

/** Says in the address that the temperature was asked in °C. */
export function InCelsius() {
  return <input type="hidden" name="in" value="c" />
}

/** A walk as hidden fields of a form that asks. */
export function WalkFields({ place, walk }: { place: Pick<GuidePlace, 'systemId'>; walk: Walk }) {
  const fields = [...new URLSearchParams(encodeWalk(walk))]
  if (place.systemId !== null) fields.push(['system', place.systemId])
  return fields.map(([name, value]) => <input key={name} type="hidden" name={name} value={value} />)
}
