import type { Metadata } from 'next'
import { FirstScreen } from '@/app/parts/guide/first-screen'
import { DEFAULT_EMERGENCY_NUMBER } from '@/lib/guide/export'

export const metadata: Metadata = { title: 'Get out now' }

export default function Page() {
  return <FirstScreen next={null} number={DEFAULT_EMERGENCY_NUMBER} />
}
