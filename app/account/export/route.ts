import { fileAnswer } from '@/app/file-answer'
import { handler } from '@/lib/access/handler'
import { exportHouseholds } from '@/lib/data/households'

/** Every home that the account sees, as one household file. */
export const GET = handler({
  name: 'export-account',
  needs: 'account',
  run: async ({ viewer, act }) => fileAnswer(await exportHouseholds(viewer), `plenum-${act.at.slice(0, 10)}`),
})
