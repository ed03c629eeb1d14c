/** Why an export was not taken, and what to do. The word stands in the address of the page that says it. */
export const BRING_FAULTS = {
  'too-large': 'This file is larger than 60 MB, the most that is read. Export a year at a time.',
  'cut-off': 'The upload was cut off, and nothing of it was kept. Send it again.',
  empty: 'Choose the file that you exported; the one that came is empty.',
  gone: 'This file was kept already, or lay here for more than a day and is gone. Bring it again.',
} as const
export type BringFault = keyof typeof BRING_FAULTS
