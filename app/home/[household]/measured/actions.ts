'use server'

import { redirect } from 'next/navigation'
import { refused } from '@/app/refusal'
import { action } from '@/lib/access/action'
import { today } from '@/lib/clock'
import { getHousehold } from '@/lib/data/households'
import { changeReadings, listReadings, removeReading, undoMeasuring } from '@/lib/data/readings'
import { dropSpooled, findSpooled } from '@/lib/data/spool'
import { type ExportChoices, parseChoices } from '@/lib/forms/thermostat/choices'
import { readBrought } from './[upload]/read-brought'
import { BRING_FAULTS } from './bring-faults'

const MEANWHILE = {
  ok: false as const,
  faults: [
    {
      path: '',
      say: 'The readings of this home were changed meanwhile. Nothing was saved. Load the page again, and look once more.',
    },
  ],
}
const MOST_FAULTS = 12

/** Keeps a thermostat's export as it was shown: read anew, and saved as a whole or not at all. */
export const keepExport = action<{ upload: string; choices: ExportChoices }>({
  name: 'measured-keep-export',
  needs: 'manage',
  parse: (form) => ({ ok: true, value: { upload: String(form.get('upload') ?? ''), choices: parseChoices(form) } }),
  run: async ({ input: { upload, choices }, act, viewer, householdId }) => {
    const file = await findSpooled(householdId, upload)
    if (!file) return { ok: false, faults: [{ path: '', say: BRING_FAULTS.gone }] }
    const { household: home } = await getHousehold(viewer, householdId)
    const standing = await listReadings(viewer, householdId)
    const read = await readBrought(file, choices, { home, standing, on: today(home.timeZone) })
    if (!read.ok) return { ok: false, faults: [{ path: '', say: read.say }] }
    const { readings, effect, faults } = read.value
    if (!effect || faults.length > 0)
      return { ok: false, faults: faults.slice(0, MOST_FAULTS).map((say) => ({ path: '', say })) }
    const saved = await changeReadings({ ...act, door: 'file' }, householdId, {
      kind: 'thermostat',
      add: [...effect.replacement.rest, ...readings],
      remove: effect.replacement.gone.map(({ id }) => id),
    })
    if (!saved.ok) return saved.because === 'changed' ? MEANWHILE : refused(saved.because)
    await dropSpooled(householdId, upload)
    redirect(`/home/${householdId}/measured?did=${saved.id}`)
  },
})

/** Takes back what was brought or taken out at once. */
export const takeBackMeasured = action<string>({
  name: 'measured-take-back',
  needs: 'manage',
  parse: (form) => ({ ok: true, value: String(form.get('measuring') ?? '') }),
  run: async ({ input, act, householdId }) => {
    const undone = await undoMeasuring(act, householdId, input)
    if (!undone.ok)
      return undone.because === 'changed'
        ? {
            ok: false,
            faults: [{ path: '', say: 'What this brought was replaced or taken out since. Take that back first.' }],
          }
        : refused(undone.because)
    redirect(`/home/${householdId}/measured?did=taken-back`)
  },
})

/** Takes one reading out. */
export const takeMeasuredOut = action<string>({
  name: 'measured-take-out',
  needs: 'manage',
  parse: (form) => ({ ok: true, value: String(form.get('reading') ?? '') }),
  run: async ({ input, act, householdId }) => {
    const gone = await removeReading(act, householdId, input)
    if (!gone.ok) return gone.because === 'changed' ? MEANWHILE : refused(gone.because)
    redirect(`/home/${householdId}/measured?did=${gone.id}`)
  },
})
