import type { Metadata } from 'next'
import { phonePlace } from '../load-place'
import { searchOf } from '../search'
import { WatchView } from './watch-view'

export const metadata: Metadata = { title: 'Time the start' }

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

export default async function Page({ searchParams }: Props) {
  return <WatchView place={await phonePlace()} search={searchOf(await searchParams)} />
}
