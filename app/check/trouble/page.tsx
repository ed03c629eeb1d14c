import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { TroubleList } from '@/app/parts/guide/trouble-list'
import { GoOn } from '../go-on'
import { phonePlace } from '../load-place'
import { findOwnHomes } from '../own-homes'
import { Remembered } from '../remembered'
import { saidAt } from '../said-at'
import { WhichHome } from './which-home'

export const metadata: Metadata = { title: 'What is the trouble?' }

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

/** Reached by "no gas smell" only; any other way leads to the hazards first. */
export default async function Page({ searchParams }: Props) {
  const params = await searchParams
  const place = await phonePlace()
  const at = saidAt(params.at, place.now)
  if (at === null) redirect('/check')
  const homes = params.home === 'other' ? [] : await findOwnHomes()
  if (homes.length > 0) return <WhichHome homes={homes} at={at} />
  return (
    <TroubleList place={place} at={at}>
      <Remembered place={place} clearanceHref="/check/cleared" />
      <GoOn base="/check" />
    </TroubleList>
  )
}
