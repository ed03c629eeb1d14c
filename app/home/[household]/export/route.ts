import { fileAnswer } from '@/app/file-answer'
import { handler } from '@/lib/access/handler'
import { exportHouseholds } from '@/lib/data/households'

/** One home as a household file. */
export const GET = handler({
  name: 'export-home',
  needs: 'see',
  run: async ({ viewer, householdId, act }) => {
    const households = await exportHouseholds(viewer, [householdId])
    return fileAnswer(households, `plenum-${households[0]?.id ?? 'home'}-${act.at.slice(0, 10)}`)
  },
})
