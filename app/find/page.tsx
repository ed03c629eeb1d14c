import { connection } from 'next/server'
import { now } from '@/lib/clock'
import { Finder } from './finder'
import { FinderOfAddress } from './finder-of-address'

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

export const metadata = { title: 'Find the filter' }

/** Reads no data: the whole page follows from its address and the minute, so that a phone can replay it offline. */
export default async function Page({ searchParams }: Props) {
  await connection()
  const fields = Object.entries(await searchParams).flatMap(([name, value]) => {
    const text = Array.isArray(value) ? value[0] : value
    return text === undefined ? [] : [[name, text]]
  })
  const search = new URLSearchParams(fields).toString()
  return (
    <Finder search={search}>
      <FinderOfAddress search={search} nowMinutes={Math.floor(now().getTime() / 60_000)} />
    </Finder>
  )
}
