import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { FirstScreen } from '@/app/parts/guide/first-screen'
import { DEFAULT_EMERGENCY_NUMBER } from '@/lib/guide/export'
import { minuteNow } from './load-place'

export const metadata: Metadata = { title: 'A problem right now' }

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

/** The first screen of the guide. It opens also while the database does not answer. */
export default async function Page({ searchParams }: Props) {
  const { home } = await searchParams
  if (typeof home === 'string' && home !== '') redirect(`/home/${encodeURIComponent(home)}/check`)
  return <FirstScreen next={`/check/trouble?at=${minuteNow()}`} number={DEFAULT_EMERGENCY_NUMBER} />
}
