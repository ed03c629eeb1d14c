import type { Metadata } from 'next'
import { GuideScreen } from '@/app/parts/guide/guide-screen'
import { findFlow } from '@/content/guide/flows'
import { RememberWalk } from '../go-on'
import { phonePlace } from '../load-place'
import { NoSuchPart } from '../no-such-part'
import { searchOf } from '../search'

type Props = {
  params: Promise<{ flow: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { flow: id } = await params
  return { title: findFlow(id)?.title ?? 'The guide' }
}

export default async function Page({ params, searchParams }: Props) {
  const { flow: id } = await params
  const flow = findFlow(id)
  if (!flow) return <NoSuchPart place={await phonePlace()} />
  const asked = await searchParams
  const search = searchOf(asked)
  return (
    <>
      <GuideScreen flow={flow} search={search} place={await phonePlace()} unsaved={asked.unsaved === '1'} />
      <RememberWalk href={`/check/${id}${search}`} />
    </>
  )
}
