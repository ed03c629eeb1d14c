'use server'

import { redirect } from 'next/navigation'
import { PHOTO_FAULTS } from '@/app/photo-faults'
import { action } from '@/lib/access/action'
import { removePhoto } from '@/lib/data/photos'

/** Takes a photo away for good. */
export const takePhotoAway = action<string>({
  name: 'photo-remove',
  needs: 'resident',
  parse: (form) => ({ ok: true, value: String(form.get('photo') ?? '') }),
  run: async ({ input, act, viewer, householdId }) => {
    const removed = await removePhoto(act, householdId, input)
    if (!removed.ok) return { ok: false, faults: [{ path: '', say: PHOTO_FAULTS[removed.because] }] }
    redirect(viewer.kind === 'link' ? '/r/photos?did=removed' : `/home/${householdId}/photos?did=removed`)
  },
})
