import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { PlanSheet } from '@/app/parts/plan-sheet'
import { today } from '@/app/today'
import { sampleFile } from '@/content/sample'
import { tables } from '@/content/tables'
import { sheetOf } from '@/lib/core/sheet'

type Props = { params: Promise<{ household: string }> }

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { household: id } = await params
  const home = sampleFile(await today('America/Chicago')).households.find((h) => h.id === id)
  return { title: home ? `${home.name}, a sample home` : 'A sample home' }
}

export default async function Page({ params }: Props) {
  const { household: id } = await params
  const home = sampleFile(await today('America/Chicago')).households.find((h) => h.id === id)
  if (!home) notFound()
  const sheet = sheetOf(home, tables, await today(home.timeZone))
  return (
    <main id="main" tabIndex={-1}>
      <PlanSheet sheet={sheet} tables={tables} storyHref={(system) => `/sample/${id}/what-happened/${system}`}>
        <p className="notice">
          This home is invented. <Link href="/sample">The other sample homes</Link> ·{' '}
          <Link href="/">Start with your own</Link>
        </p>
      </PlanSheet>
    </main>
  )
}
