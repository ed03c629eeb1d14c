import type { Fault } from '@/lib/core/fault'

const SAY: Record<string, string> = {
  'not-found': 'This is not there any more. Load the page again.',
  'not-allowed': 'Your part in this home does not include this. Ask whoever owns it here.',
  closed: 'This home is closed. Open it again first.',
  open: 'This home is open. Close it first.',
  gone: 'This invitation was used already, taken back, or is over. Ask for a new one.',
}

/** Why a write was not done, as an action answers it. */
export function refused(because: keyof typeof SAY): { ok: false; faults: Fault[] } {
  return { ok: false, faults: [{ path: '', say: SAY[because] ?? 'This was not done. Load the page again.' }] }
}
