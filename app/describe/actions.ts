'use server'

import { redirect } from 'next/navigation'
import { action } from '@/lib/access/action'
import { today } from '@/lib/clock'
import { dropDraft, findDraft, finishDraft, saveDraft } from '@/lib/data/drafts'
import type { DraftAnswers } from '@/lib/forms/describe/answers'
import { describedHome, draftZone, stepFaults } from '@/lib/forms/describe/described-home'
import { parseStep } from '@/lib/forms/describe/parse-step'
import { moved } from '@/lib/forms/describe/steps'
import { DESCRIBE_TABLES } from './tables'

/** Keeps one screen as it was typed, and goes on only if all of it can be read; back, leave and the helpers keep it too. */
export const saveStep = action({
  name: 'describe-step',
  needs: 'account',
  parse: parseStep,
  run: async ({ input, act }) => {
    const { step, button, typed } = input
    const { answers } = await saveDraft(act, (draft) => {
      const answers: DraftAnswers = { ...draft?.answers, [step]: typed }
      return { step, answers }
    })
    if (button === 'next' || button === 'another') {
      const faults = stepFaults(step, answers, {
        tables: DESCRIBE_TABLES,
        on: today(draftZone(answers, DESCRIBE_TABLES)),
      })
      if (faults.length > 0) return { ok: false, faults }
    }
    const next = await saveDraft(act, (draft) => moved(step, button, draft?.answers ?? answers))
    const shown = button === 'size' ? '?shown=size#width' : button === 'more' ? '?shown=more#device' : ''
    redirect(button === 'leave' ? '/' : `/describe/${next.step}${shown}`)
  },
})

/** Makes the described home and leads to what is due in it. */
export const finishDescribing = action({
  name: 'describe-finish',
  needs: 'account',
  parse: () => ({ ok: true, value: null }),
  run: async ({ act, viewer }) => {
    const draft = await findDraft(viewer)
    if (!draft) redirect('/')
    const described = describedHome(draft.answers, { tables: DESCRIBE_TABLES, today })
    if (!described.ok) return { ok: false, faults: described.faults }
    const added = await finishDraft(act, described.home)
    if (!added) redirect('/')
    if (!added.ok) return added
    redirect(`/home/${added.ids[0]}`)
  },
})

/** Throws the draft away and begins anew. */
export const startAnew = action({
  name: 'describe-anew',
  needs: 'account',
  parse: () => ({ ok: true, value: null }),
  run: async ({ act }) => {
    await dropDraft(act)
    redirect('/describe/home')
  },
})
