import type { Household } from '@/lib/core/household'
import type { Act } from '@/lib/core/viewer'
import { readingRow } from './household-rows'
import type { Row } from './insert'
import { newId } from './new-id'
import { recordRow } from './record-rows'
import { signature } from './scope'

/** The records of a household as entries of the log, signed by whoever brings the file. */
export function entryRows(act: Act, householdId: string, { records }: Household): Row[] {
  return records.map((record, position) => ({
    ...{ id: newId(), householdId, position, ...recordRow(record) },
    ...{ ...signature(act.viewer), at: act.at, door: act.door },
  }))
}

/** The readings of a household as rows. */
export function readingRows(householdId: string, { readings }: Household): Row[] {
  return readings.map((reading, position) => ({ id: newId(), householdId, position, ...readingRow(reading) }))
}
