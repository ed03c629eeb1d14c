import type { Household } from '@/lib/core/household'
import { writeHouseholdFile } from '@/lib/forms/household-file'

/** A household file to be saved under a name; what a header cannot carry is left out of the name. */
export function fileAnswer(households: Household[], name: string): Response {
  const plain = name.replace(/[^\w.-]+/g, '-')
  return new Response(writeHouseholdFile(households), {
    headers: {
      'content-type': 'application/json; charset=utf-8',
      'content-disposition': `attachment; filename="${plain}.json"`,
      'cache-control': 'no-store',
    },
  })
}
