'use server'

import { redirect } from 'next/navigation'
import { FINDER_CARD_TEXTS } from '@/content/finder/card-texts'
import { FINDER } from '@/content/finder/finder'
import { action } from '@/lib/access/action'
import type { Fault } from '@/lib/core/fault'
import { type FoundFilter, saveFoundFilter } from '@/lib/data/found-filter'
import { typedSize } from '@/lib/forms/size-form'
import { finderCard } from '@/lib/guide/finder-card'
import { answersFromAddress, replayFinder } from '@/lib/guide/finder-replay'
import { readSize } from '../read-size'

const REFUSED = {
  'not-found': 'This home is no longer open to you. Ask whoever owns it here.',
  'not-allowed': 'Your part in this home does not include this. Ask whoever owns it here.',
  closed: 'This home is closed: nothing can be changed in it.',
}

/** Saves the card that the address in the form makes to a filter of a home. */
export const saveCard = action<FoundFilter>({
  name: 'filter-card-save',
  needs: 'resident',
  parse: parseCard,
  run: async ({ input, act, viewer, householdId }) => {
    const saved = await saveFoundFilter(act, householdId, input)
    if (!saved.ok) {
      const fault =
        saved.because === 'fault' ? { path: 'which', say: saved.say } : { path: '', say: REFUSED[saved.because] }
      return { ok: false, faults: [fault] }
    }
    redirect(viewer.kind === 'link' ? '/r?did=found' : `/home/${householdId}/find?saved=${saved.filter}`)
  },
})

function parseCard(form: FormData): { ok: true; value: FoundFilter } | { ok: false; faults: Fault[] } {
  const field = (name: string) => String(form.get(name) ?? '')
  const state = replayFinder(FINDER, answersFromAddress(field('a')))
  if (state.screen.kind !== 'card' || state.stray.length > 0) {
    return { ok: false, faults: [{ path: '', say: 'The card’s address is not whole. Go through Find again.' }] }
  }
  const card = finderCard(state.draft, FINDER_CARD_TEXTS)
  const typed = typedSize(field)
  const size = card.sizeFrom === 'none' || typed === null ? null : readSize(typed)
  if (size?.kind === 'refused') return { ok: false, faults: size.faults.map(({ say }) => ({ path: '', say })) }
  const which = /^(filter|system) (.{1,64})$/s.exec(field('which'))
  if (!which?.[2]) return { ok: false, faults: [{ path: 'which', say: 'Choose which filter it is.' }] }
  const medium = card.sizeFrom === 'none' ? 'screen' : state.draft.washable === 'yes' ? 'washable' : null
  return {
    ok: true,
    value: {
      place: card.place,
      // A screen is not bought by size: the model wants three numbers, and a wall unit's screens are about so large [CP].
      nominal: size?.nominal ?? (card.sizeFrom === 'none' ? SCREEN : null),
      medium,
      at: which[1] === 'filter' ? { filter: which[2] } : { system: which[2] },
    },
  }
}

const SCREEN = { widthIn: 12, heightIn: 12, depthIn: 0.5 }
