import type { Metadata } from 'next'
import { phonePlace } from '../load-place'
import { searchOf } from '../search'
import { briefOfAddress } from './brief-of-address'
import { BriefView } from './brief-view'
import { minuteInWords } from './minute-words'

export const metadata: Metadata = { title: 'Brief' }

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

/** Without an account: the brief is its address, and nothing is kept here. */
export default async function Page({ searchParams }: Props) {
  const search = searchOf(await searchParams)
  const place = await phonePlace()
  const nothingKnown = { household: null, system: null, filters: [] }
  const made = briefOfAddress(place, search, nothingKnown, (minute) => minuteInWords(minute, 'UTC'))
  return <BriefView place={place} search={search} made={made} />
}
