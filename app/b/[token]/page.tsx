import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { connection } from 'next/server'
import { databasePage } from '@/app/database-page'
import { BriefSheet } from '@/app/parts/guide/brief-sheet'
import { CopyAndPrint } from '@/app/parts/guide/copy-text'
import { hashToken } from '@/lib/access/tokens'
import { now } from '@/lib/clock'
import { dayInWords } from '@/lib/core/day-words'
import { findSharedBrief } from '@/lib/data/briefs'
import { instant } from '@/lib/data/instant'
import { briefText } from '@/lib/guide/brief'

export const metadata: Metadata = { title: 'Brief', robots: { index: false }, referrer: 'no-referrer' }

type Props = { params: Promise<{ token: string }> }

/** What a shared link shows: this one page, until the link ends. */
async function Page({ params }: Props) {
  await connection()
  const { token } = await params
  const brief = await findSharedBrief(hashToken(token), instant(now()))
  if (!brief) notFound()
  return (
    <main id="main" tabIndex={-1} className="guide">
      <BriefSheet brief={brief.page} />
      <p className="hint">
        From the people in the home, written on {dayInWords(brief.on)}.
        {brief.sharedUntil && ` This link ends on ${dayInWords(brief.sharedUntil.slice(0, 10))}.`}
      </p>
      <CopyAndPrint text={briefText(brief.page)} />
    </main>
  )
}

export default databasePage(Page)
