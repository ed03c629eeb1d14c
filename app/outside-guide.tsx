'use client'

import { usePathname } from 'next/navigation'
import type { ReactNode } from 'react'

/** `/check/…` and `/home/<id>/check/…`, not the pages that are read in peace. */
export function isGuidePath(path: string): boolean {
  return /^(\/home\/[^/]+)?\/check(\/|$)/.test(path)
}

/** What stands around every page but the guide's: there nothing may draw anyone away from the words. */
export function OutsideGuide({ children }: { children: ReactNode }) {
  return isGuidePath(usePathname()) ? null : children
}
