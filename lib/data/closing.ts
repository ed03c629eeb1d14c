import type { Day } from '@/lib/core/day'
import type { Act } from '@/lib/core/viewer'
import { type Questions, together } from './connection'
import { removePhotoFolder } from './photos'
import { markProfile, type Refusal, raise } from './scope'
import { removeSpools } from './spool'

type Done = { ok: true; revision: number } | Refusal

/** What the log says instead of a name that was removed. */
export const NAME_REMOVED = 'someone who lived here'

/** Closes a household on a day: it stays to be read, nothing is due, and nothing can be written until it is reopened. */
export function closeHousehold(act: Act, householdId: string, on: Day): Promise<Done> {
  return setState(act, householdId, { state: 'closed', closedOn: on })
}

/** Opens a closed household again. */
export function reopenHousehold(act: Act, householdId: string): Promise<Done> {
  return setState(act, householdId, { state: 'open', closedOn: null })
}

function setState(act: Act, householdId: string, data: { state: string; closedOn: Day | null }): Promise<Done> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'own', evenClosed: true })
    if (!raised.ok) return raised
    await tx.household.update({ where: { id: householdId }, data })
    return { ok: true, revision: raised.revision }
  })
}

/**
 * Removes for good, from a closed household only. `people`: facts about people (names in the log, contacts, notes,
 * other members, who lives there); the equipment and what was done to it stay readable. `everything`: the household.
 */
export function purgeHousehold(
  act: Act,
  householdId: string,
  what: 'people' | 'everything',
): Promise<Done | { ok: false; because: 'open' }> {
  return purgeRows(act, householdId, what).then(async (purged) => {
    // After the rows: a picture without a row is shown to nobody, a row without a picture would be a hole.
    if (purged.ok) await Promise.all([removePhotoFolder(householdId), removeSpools(householdId)])
    return purged
  })
}

function purgeRows(
  act: Act,
  householdId: string,
  what: 'people' | 'everything',
): Promise<Done | { ok: false; because: 'open' }> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'own', evenClosed: true })
    if (!raised.ok) return raised
    if (raised.closedOn === null) return { ok: false, because: 'open' }
    // First, so that a half-done purge that was interrupted by hand could only have left the equipment.
    await purgePeople(tx, householdId, raised.ownerId)
    if (what === 'everything') await tx.household.delete({ where: { id: householdId } })
    return { ok: true, revision: raised.revision }
  })
}

async function purgePeople(tx: Questions, householdId: string, ownerId: string): Promise<void> {
  await tx.contact.deleteMany({ where: { householdId } })
  // A brief tells how people were; what happened to the equipment stays, without anybody's own words.
  await tx.brief.deleteMany({ where: { householdId } })
  await tx.episodeEvent.updateMany({ where: { householdId }, data: { note: null } })
  await tx.invitation.deleteMany({ where: { householdId } })
  await tx.membership.deleteMany({ where: { householdId, accountId: { not: ownerId } } })
  await tx.filter.updateMany({ where: { householdId }, data: { placeNote: null } })
  await tx.photo.deleteMany({ where: { householdId } })
  await closeLinks(tx, householdId)
  await forgetNames(tx, householdId)
  // The reference home of the model: two people, no pets. It says nothing about who lived here.
  const nobody = { people: 2, pets: 0, petFactor: null, smoking: false, vulnerable: false, accessNote: null }
  await tx.household.update({ where: { id: householdId }, data: nobody })
  await markProfile(tx, householdId)
}

/** Takes the names of all people, or of one account, out of a household's log. */
export async function forgetNames(tx: Questions, householdId: string, accountId?: string): Promise<void> {
  const whose = accountId ? { byAccount: accountId } : {}
  const names = await tx.entry.findMany({
    where: { householdId, ...whose },
    distinct: ['byName'],
    select: { byName: true },
  })
  const paused = await tx.pause.findMany({
    where: { householdId, ...whose },
    distinct: ['byName'],
    select: { byName: true },
  })
  const measured = await tx.measuring.findMany({
    where: { householdId, ...whose },
    distinct: ['byName'],
    select: { byName: true },
  })
  // Of what was taken back only the name is kept: any that this account has signed by here, and the one it has now.
  const now = accountId ? await tx.user.findMany({ where: { id: accountId }, select: { name: true } }) : []
  const signed = [...[...names, ...paused, ...measured].map(({ byName }) => byName), ...now.map(({ name }) => name)]
  const undoneBy = accountId ? { in: signed } : { not: null }
  await tx.entry.updateMany({ where: { householdId, undoneBy }, data: { undoneBy: NAME_REMOVED } })
  const nobody = { byAccount: null, byName: NAME_REMOVED }
  await tx.entry.updateMany({ where: { householdId, ...whose }, data: nobody })
  await tx.measuring.updateMany({ where: { householdId, undoneBy }, data: { undoneBy: NAME_REMOVED } })
  await tx.measuring.updateMany({ where: { householdId, ...whose }, data: nobody })
  await tx.putOff.updateMany({ where: { householdId, ...whose }, data: nobody })
  await tx.away.updateMany({ where: { householdId, ...whose }, data: nobody })
  await tx.pause.updateMany({ where: { householdId, endedBy: undoneBy }, data: { endedBy: NAME_REMOVED } })
  await tx.pause.updateMany({ where: { householdId, ...whose }, data: nobody })
  const reminded = accountId ? { accountId } : {}
  await tx.reminded.updateMany({ where: { householdId, ...reminded }, data: { accountId: null, name: NAME_REMOVED } })
  await tx.photo.updateMany({ where: { householdId, ...whose }, data: nobody })
  await tx.message.updateMany({ where: { householdId, ...whose }, data: nobody })
  const created = accountId ? { createdBy: accountId } : {}
  const noCreator = { createdBy: null, createdName: NAME_REMOVED }
  await tx.renterLink.updateMany({ where: { householdId, ...created }, data: noCreator })
  await tx.episodeEvent.updateMany({ where: { householdId, ...whose }, data: nobody })
  await tx.brief.updateMany({ where: { householdId, ...whose }, data: nobody })
}

/** Ends every renter's link of a household, and forgets what was written by them: for another owner, or for nobody. */
export async function closeLinks(tx: Questions, householdId: string): Promise<void> {
  await tx.renterLink.deleteMany({ where: { householdId } })
  await tx.message.deleteMany({ where: { householdId } })
}
