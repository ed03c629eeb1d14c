import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { briefOfAddress } from '@/app/check/brief/brief-of-address'
import { BriefView } from '@/app/check/brief/brief-view'
import { minuteInWords } from '@/app/check/brief/minute-words'
import { placeOf } from '@/app/check/load-place'
import { searchOf } from '@/app/check/search'
import { databasePage } from '@/app/database-page'
import { OneButton } from '@/app/home/[household]/one-button'
import { requireViewer } from '@/lib/access/page'
import { may } from '@/lib/core/viewer'
import { findHousehold } from '@/lib/data/households'
import { writeBrief } from './actions'
import { briefFacts } from './brief-facts'

export const metadata: Metadata = { title: 'Brief' }

type Props = {
  params: Promise<{ household: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

/** The brief as it would be written into the log. */
async function Page({ params, searchParams }: Props) {
  const { household: id } = await params
  const asked = await searchParams
  const search = searchOf(asked)
  const viewer = await requireViewer(`/home/${id}/check/brief${search}`)
  const stored = await findHousehold(viewer, id)
  if (!stored) notFound()
  const place = await placeOf(viewer, id, asked.system)
  const facts = briefFacts(stored, place.systemId, place.today)
  const made = briefOfAddress(place, search, facts, (minute) => minuteInWords(minute, stored.household.timeZone))
  return (
    <BriefView place={place} search={search} made={made}>
      {made !== null && may(stored.role, 'record') && (
        <div className="no-print">
          <OneButton action={writeBrief} fields={{ household: id, search }}>
            Write it into the log, to share it
          </OneButton>
        </div>
      )}
    </BriefView>
  )
}

export default databasePage(Page)
