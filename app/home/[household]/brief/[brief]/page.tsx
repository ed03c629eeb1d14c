import { notFound } from 'next/navigation'
import { databasePage } from '@/app/database-page'
import { HomeNav } from '@/app/home/[household]/home-nav'
import { loadHome } from '@/app/home/[household]/load'
import { homeTitle } from '@/app/home/[household]/title'
import { BriefSheet } from '@/app/parts/guide/brief-sheet'
import { CopyAndPrint } from '@/app/parts/guide/copy-text'
import { now } from '@/lib/clock'
import { dayInWords } from '@/lib/core/day-words'
import { may } from '@/lib/core/viewer'
import { findBrief } from '@/lib/data/briefs'
import { instant } from '@/lib/data/instant'
import { briefText } from '@/lib/guide/brief'
import { ShareBrief } from './share-brief'

export const generateMetadata = homeTitle('Brief')

type Props = { params: Promise<{ household: string; brief: string }> }

/** One page for the technician, as it was written into the log. */
async function Page({ params }: Props) {
  const { household: id, brief: briefId } = await params
  const { viewer, stored, on } = await loadHome(id, `/home/${id}/brief/${briefId}`)
  const brief = await findBrief(viewer, id, briefId)
  if (!brief) notFound()
  const until = brief.sharedUntil !== null && brief.sharedUntil > instant(now()) ? brief.sharedUntil : null
  return (
    <>
      <HomeNav id={id} home={stored.household} current="Log" />
      <main id="main" tabIndex={-1} className="guide">
        <BriefSheet brief={brief.page} />
        <p className="hint">
          Written into the log on {dayInWords(brief.on, on)} by {brief.byName}.
        </p>
        <CopyAndPrint text={briefText(brief.page)} />
        {may(stored.role, 'record') && (
          <div className="no-print">
            <ShareBrief household={id} brief={briefId} until={until && dayInWords(until.slice(0, 10), on)} />
          </div>
        )}
      </main>
    </>
  )
}

export default databasePage(Page)
