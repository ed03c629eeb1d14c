import Link from 'next/link'
import { notFound } from 'next/navigation'
import { addressPart } from '@/app/address-part'
import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { SystemStoryView } from '@/app/parts/story/system-story-view'
import { tables } from '@/content/tables'
import { systemStory } from '@/lib/core/home-story'
import { HomeNav } from '../../home-nav'
import { loadHome } from '../../load'

type Props = { params: Promise<{ household: string; system: string }> }

export const generateMetadata = homeTitle(
  'What happened',
  (home, { system }: { household: string; system: string }) => {
    const name = home.systems.find(({ id }) => id === addressPart(system))?.name
    return name ? `What happened: ${name}` : 'What happened'
  },
)

async function Page({ params }: Props) {
  const { household: id, system: encoded } = await params
  const { stored, on } = await loadHome(id, `/home/${id}/what-happened/${encoded}`)
  const { household } = stored
  const story = systemStory(household, addressPart(encoded), tables, on)
  if (!story) notFound()
  return (
    <>
      <HomeNav id={id} home={household} current="Log" />
      <main id="main" tabIndex={-1}>
        <h1>What happened: {story.system.name}</h1>
        <p className="lead">
          How long it ran, how its filters filled, and what your looks taught. The{' '}
          <Link href={`/home/${id}/log`}>log</Link> has it line by line.
        </p>
        <SystemStoryView household={household} story={story} on={on} tables={tables} />
      </main>
    </>
  )
}

export default databasePage(Page)
