import type { Household } from '@/lib/core/household'
import type { Act, Viewer } from '@/lib/core/viewer'
import { ask, together } from './connection'
import { addHouseholdIn, type Imported } from './import'
import { holdAccount } from './scope'

/** A description that is not finished: by screen, what was typed into each field. */
export interface Draft {
  /** The screen to take it up at. */
  step: string
  answers: Record<string, Record<string, string[]>>
}

/** The viewer's own draft, or null. */
export function findDraft(viewer: Viewer): Promise<Draft | null> {
  return ask(async (db) => {
    if (viewer.kind !== 'account') return null
    const row = await db.draft.findUnique({ where: { accountId: viewer.accountId } })
    return row && { step: row.step, answers: JSON.parse(row.answers) }
  })
}

/**
 * Changes the draft, or begins one: `change` is given what stands now, so that two tabs on two screens lose nothing of
 * each other.
 */
export function saveDraft(act: Act, change: (draft: Draft | null) => Draft): Promise<Draft> {
  return together(async (tx) => {
    if (act.viewer.kind !== 'account') throw new Error('a draft belongs to an account')
    const { accountId } = act.viewer
    await holdAccount(tx, accountId)
    const row = await tx.draft.findUnique({ where: { accountId } })
    const draft = change(row && { step: row.step, answers: JSON.parse(row.answers) })
    const kept = { step: draft.step, answers: JSON.stringify(draft.answers), savedAt: act.at }
    await tx.draft.upsert({ where: { accountId }, create: { accountId, ...kept }, update: kept })
    return draft
  })
}

/** Throws the draft away. */
export function dropDraft(act: Act): Promise<void> {
  return ask(async (db) => {
    if (act.viewer.kind === 'account') await db.draft.deleteMany({ where: { accountId: act.viewer.accountId } })
  })
}

/** The finished home in, its draft out: both or neither. Null where the draft is gone, so that sent twice it is one home. */
export function finishDraft(act: Act, household: Household): Promise<Imported | null> {
  return together(async (tx) => {
    if (act.viewer.kind !== 'account') return null
    const { count } = await tx.draft.deleteMany({ where: { accountId: act.viewer.accountId } })
    return count === 0 ? null : addHouseholdIn(tx, act, household)
  })
}
