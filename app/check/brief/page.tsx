import type { Metadata } from 'next'
import { phonePlace } from '../load-place'
import { searchOf } from '../search'
import { PhoneBrief } from './phone-brief'

export const metadata: Metadata = { title: 'Brief' }

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

/** Without an account: the brief is its address, and nothing is kept here. */
export default async function Page({ searchParams }: Props) {
  const search = searchOf(await searchParams)
  const place = await phonePlace()
  return <PhoneBrief place={place} search={search} />
}
