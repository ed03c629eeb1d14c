import Link from 'next/link'
import type { ReactNode } from 'react'
import { may } from '@/lib/core/viewer'
import { HomeNav } from '../home-nav'
import type { LoadedHome } from '../load'

/** A page on which measured hours are typed in; whoever may not is told so. */
export function MeasuredPart({
  home: { stored },
  title,
  children,
}: {
  home: LoadedHome
  title: string
  children: ReactNode
}) {
  const { id, household } = stored
  return (
    <>
      <HomeNav id={id} home={household} current="Details" />
      <main id="main" tabIndex={-1}>
        <p className="place">
          <Link href={`/home/${id}/measured`}>Measured hours</Link>
        </p>
        <h1>{title}</h1>
        {!may(stored.role, 'manage') || stored.state !== 'open' ? (
          <p>This home can be read, but not changed by you.</p>
        ) : household.systems.length === 0 ? (
          <p>This home has no system that could be measured. Describe it first.</p>
        ) : (
          children
        )}
      </main>
    </>
  )
}
