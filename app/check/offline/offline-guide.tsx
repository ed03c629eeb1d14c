'use client'

import dynamic from 'next/dynamic'
import { FirstScreen } from '@/app/parts/guide/first-screen'
import { DEFAULT_EMERGENCY_NUMBER } from '@/lib/guide/export'

/**
 * The guide with the network gone: the same screens. Before scripts run the first screen stands here, and leads nowhere:
 * only they know which home's guide it is. All flows come after it, out of what the worker keeps.
 */
export const OfflineGuide = dynamic(() => import('./replayed-guide').then((module) => module.ReplayedGuide), {
  ssr: false,
  loading: () => <FirstScreen next="/check" number={DEFAULT_EMERGENCY_NUMBER} opening />,
})
