import Link from 'next/link'
import { notFound } from 'next/navigation'
import { addressPart } from '@/app/address-part'
import { SystemStoryView } from '@/app/parts/story/system-story-view'
import { today } from '@/app/today'
import { sampleFile } from '@/content/sample'
import { tables } from '@/content/tables'
import { systemStory } from '@/lib/core/home-story'

type Props = { params: Promise<{ household: string; system: string }> }

export const metadata = { title: 'What happened in a sample home' }

export default async function Page({ params }: Props) {
  const { household: id, system } = await params
  const home = sampleFile(await today('America/Chicago')).households.find((each) => each.id === id)
  const on = home && (await today(home.timeZone))
  const story = home && on ? systemStory(home, addressPart(system), tables, on) : null
  if (!home || !on || !story) notFound()
  return (
    <main id="main" tabIndex={-1}>
      <h1>What happened: {story.system.name}</h1>
      <p className="notice">
        This home is invented. <Link href={`/sample/${id}`}>Back to {home.name}</Link>
      </p>
      <SystemStoryView household={home} story={story} on={on} tables={tables} />
    </main>
  )
}
