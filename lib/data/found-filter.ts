import type { FilterPlace, Medium, NominalSize } from '@/lib/core/household'
import type { Act } from '@/lib/core/viewer'
import { misfitOf } from '@/lib/forms/rules/equipment-rules'
import { type Questions, together } from './connection'
import { systemValue } from './household-values'
import { newId } from './new-id'
import { markProfile, type Refusal, raise, signature } from './scope'

/** What somebody found at the filter itself. A size that was not read leaves the kept one as it is. */
export interface FoundFilter {
  place: FilterPlace
  nominal: NominalSize | null
  /** Only `screen` and `washable` are told by the finder; null leaves the kept one. */
  medium: Medium | null
  /** Which filter it is, or the system that a new one belongs to. */
  at: { filter: string } | { system: string }
}

export type SavedFilter =
  | { ok: true; filter: string; revision: number }
  | Refusal
  | { ok: false; because: 'fault'; say: string }

/**
 * Saves what was found. Whoever may record may do it, a renter by a link too: whoever looks at the filter knows best
 * where it is. A message says who changed what, so that the owner can put it right.
 */
export function saveFoundFilter(act: Act, householdId: string, found: FoundFilter): Promise<SavedFilter> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'record' })
    if (!raised.ok) return raised
    const filter =
      'filter' in found.at
        ? await changeFilter(tx, householdId, found.at.filter, found)
        : await addFilter(tx, householdId, found.at.system, found)
    if (filter === null) return fault('This is not in the home any more. Go back and choose again.')
    if ('say' in filter) return fault(filter.say)
    await markProfile(tx, householdId)
    const linkId = act.viewer.kind === 'link' ? act.viewer.linkId : null
    await tx.message.create({
      data: {
        id: newId(),
        householdId,
        text: filter.text,
        ...signature(act.viewer),
        linkId,
        at: act.at,
        door: act.door,
      },
    })
    return { ok: true, filter: filter.id, revision: raised.revision }
  })
}

type Changed = { id: string; text: string } | { say: string } | null

function fault(say: string): SavedFilter {
  return { ok: false, because: 'fault', say }
}

async function changeFilter(tx: Questions, householdId: string, id: string, found: FoundFilter): Promise<Changed> {
  const key = { householdId_id: { householdId, id } }
  const kept = await tx.filter.findUnique({ where: key })
  if (!kept) return null
  const misfit = await misfitIn(tx, householdId, kept.system, found)
  if (misfit !== undefined) return misfit
  const data = { place: found.place, ...found.nominal, ...mediumOf(found, kept) }
  const filter = await tx.filter.update({ where: key, data })
  return { id, text: `Found the filter “${id}”: was ${words(kept)}, is now ${words(filter)}.` }
}

async function addFilter(tx: Questions, householdId: string, system: string, found: FoundFilter): Promise<Changed> {
  const misfit = await misfitIn(tx, householdId, system, found)
  if (misfit !== undefined) return misfit
  if (found.nominal === null) return { say: 'A new filter needs its size. Go back, read or measure it, and save then.' }
  const filters = await tx.filter.findMany({ where: { householdId } })
  const devices = await tx.device.findMany({ where: { householdId }, select: { id: true } })
  const systems = await tx.system.findMany({ where: { householdId }, select: { id: true } })
  const taken = new Set([...filters, ...devices, ...systems].map(({ id }) => id))
  let number = filters.length + 1
  while (taken.has(`filter-${number}`)) number++
  const position = Math.max(-1, ...filters.map((filter) => filter.position)) + 1
  const row = { householdId, id: `filter-${number}`, position, system, place: found.place, ...found.nominal }
  const filter = await tx.filter.create({ data: { ...row, medium: found.medium ?? kindByDepth(found.nominal) } })
  return { id: filter.id, text: `Found another filter, “${filter.id}”: ${words(filter)}.` }
}

/** Null where there is no such system, a sentence where no filter can be in such a place of it, else nothing. */
async function misfitIn(tx: Questions, householdId: string, id: string, { place }: FoundFilter) {
  const system = await tx.system.findUnique({ where: { householdId_id: { householdId, id } } })
  if (!system) return null
  if (misfitOf(place, systemValue(system)) === undefined) return undefined
  const say = `A filter there does not belong to “${system.name}”, as this home is described. Choose another system, or change the description first.`
  return { say }
}

// A filter of four inches and more is a deep pleated one; thinner ones are pleated most often [CP].
function kindByDepth({ depthIn }: NominalSize): Medium {
  return depthIn >= 4 ? 'media' : 'pleated'
}

/** A screen has no rating; what was a screen and is none now is of a kind that has to be assumed. */
function mediumOf(found: FoundFilter, kept: { medium: string; depthIn: number }): { medium?: string; merv?: null } {
  if (found.medium === null) {
    return kept.medium === 'screen'
      ? { medium: kindByDepth(found.nominal ?? { ...NO_SIZE, depthIn: kept.depthIn }) }
      : {}
  }
  return found.medium === kept.medium ? {} : { medium: found.medium, merv: null }
}

const NO_SIZE = { widthIn: 0, heightIn: 0 }

function words(filter: { place: string; widthIn: number; heightIn: number; depthIn: number; medium: string }): string {
  const { place, widthIn, heightIn, depthIn, medium } = filter
  const size = medium === 'screen' ? 'a screen' : `${widthIn} × ${heightIn} × ${depthIn}`
  return `${place.replaceAll('-', ' ')}, ${size}`
}
