import type { Fault } from '@/lib/core/fault'
import { ErrorSummary } from './error-summary'

/** Faults as an action answers them, at the top of their form; a path is the field's id. */
export function FaultList({ faults }: { faults: Fault[] }) {
  return <ErrorSummary faults={faults.map(({ path, say }) => ({ ...(path && { field: path }), say }))} />
}
