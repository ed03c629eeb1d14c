import { PlanSheet } from '@/app/parts/plan-sheet'
import { tables } from '@/content/tables'
import type { Shown } from './actions'

/** Each home of a brought file as its own sheet. */
export function BroughtSheets({ sheets }: Pick<Shown, 'sheets'>) {
  return sheets.map((sheet) => <PlanSheet key={sheet.household.id} sheet={sheet} tables={tables} />)
}
