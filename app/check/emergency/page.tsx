import type { Metadata } from 'next'
import { FirstScreen } from '@/app/parts/guide/first-screen'

export const metadata: Metadata = { title: 'Get out now' }

export default function Page() {
  return <FirstScreen next={null} number="911" />
}
