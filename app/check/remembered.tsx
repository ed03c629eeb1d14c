import { dayInWords } from '@/lib/core/day-words'
import { type GuidePlace, placeEpisode } from '@/lib/guide/place'

/** What was met before and still counts, and the one way to end it. */
export function Remembered({ place, clearanceHref }: { place: GuidePlace; clearanceHref: string }) {
  const episode = placeEpisode(place)
  const who = place.home ? 'In this home' : 'On this phone'
  const last = (kinds: string[]) => place.events.findLast(({ kind }) => kinds.includes(kind))
  const hazard = last(['hazard-leave', 'hazard-stop'])
  const start = last(['start-spent', 'trip', 'imported'])
  const lines: string[] = []
  if (episode.closedByHazard !== 'no' && hazard)
    lines.push(
      `${who} a hazard was met on ${dayInWords(hazard.on, place.today)}. Until a professional has cleared it, there is nothing to try here.`,
    )
  if (episode.resetUsed === 'yes' && start?.kind === 'imported')
    lines.push(
      `${who} nobody knows what was tried before: it was brought here from a file on ${dayInWords(start.on, place.today)}. So the one start counts as used.`,
    )
  else if (episode.resetUsed === 'yes' && start)
    lines.push(
      `${who} the one start was used on ${dayInWords(start.on, place.today)}${episode.tripped === 'yes' ? ', and it stopped again' : ''}.`,
    )
  if (lines.length === 0) return null
  return (
    <div className="notice">
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <p>
        <a className="plain-tap" href={clearanceHref}>
          A technician or a crew has been here
        </a>
      </p>
    </div>
  )
}
