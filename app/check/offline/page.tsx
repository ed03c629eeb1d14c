import type { Metadata } from 'next'
import { OfflineGuide } from './offline-guide'

export const metadata: Metadata = { title: 'A problem right now' }

/** The page that a phone keeps: it replays any address of the guide by itself. Opened by its own address it is the first screen. */
export default function Page() {
  return <OfflineGuide />
}
