import { HazardText } from '@/app/parts/hazard-text'
import { FINDER_ESCAPE } from '@/content/finder/finder'
import { TASKS, type Task } from '@/lib/core/household'
import { taskInWords } from '@/lib/core/words'
import { listMessages } from '@/lib/data/messages'
import { fillEmergency } from '@/lib/guide/export'
import { momentInWords } from '../../moment-in-words'
import { rentedPage } from '../rented-page'
import { RenterNav } from '../renter-nav'
import { WriteForm } from './write-form'

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

export const metadata = { title: 'Write to the landlord' }

export default rentedPage(async (home, { searchParams }: Props) => {
  const { sent, about } = await searchParams
  const { viewer, stored } = home
  const messages = await listMessages(viewer, stored.id)
  const { timeZone } = stored.household
  return (
    <>
      <RenterNav id={stored.id} home={stored.household} current="Write" />
      <main id="main" tabIndex={-1}>
        <h1>Write to the landlord</h1>
        <HazardText
          heading="Danger does not wait for an answer"
          lines={[fillEmergency(FINDER_ESCAPE, stored.household.emergencyNumber)]}
        />
        {sent && (
          <p className="notice" role="status">
            Kept. Whoever looks after this home sees it the next time they look here. If it cannot wait, call them.
          </p>
        )}
        <WriteForm household={stored.id} text={isTask(about) ? `About: ${taskInWords(about)}.\n` : ''} />
        {messages.length > 0 && (
          <section aria-labelledby="sent">
            <h2 id="sent">What you wrote and did</h2>
            <ul className="plain-list">
              {messages.map(({ id, text, at, readAt }) => (
                <li key={id}>
                  <p className="as-typed">{text}</p>
                  <p className="hint">
                    {momentInWords(at, timeZone)}
                    {readAt ? `; read ${momentInWords(readAt, timeZone)}` : '; not read yet'}
                  </p>
                </li>
              ))}
            </ul>
          </section>
        )}
      </main>
    </>
  )
})

function isTask(text: unknown): text is Task {
  return (TASKS as readonly unknown[]).includes(text)
}
