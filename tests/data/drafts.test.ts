import { expect, test } from 'vitest'
import { dropDraft, findDraft, finishDraft, saveDraft } from '@/lib/data/drafts'
import { exportHouseholds, listHomes, listHouseholds } from '@/lib/data/households'
import { saveHousehold } from '@/lib/data/save-household'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase, someone } from '../support/fresh-database'

freshDatabase()

test('a draft is its account’s own, and two tabs lose nothing of each other', async () => {
  const [ann, ben] = [await someone('ann'), await someone('ben')]
  await Promise.all([
    saveDraft(as(ann), (draft) => ({ step: 'home', answers: { ...draft?.answers, home: { name: ['Ann’s'] } } })),
    saveDraft(as(ann), (draft) => ({ step: 'people', answers: { ...draft?.answers, people: { pets: ['2'] } } })),
  ])
  expect((await findDraft(ann))?.answers).toEqual({ home: { name: ['Ann’s'] }, people: { pets: ['2'] } })
  expect(await findDraft(ben)).toBeNull()
  expect(await findDraft({ kind: 'system' })).toBeNull()
  await dropDraft(as(ben))
  expect(await findDraft(ann)).not.toBeNull()
  await dropDraft(as(ann))
  expect(await findDraft(ann)).toBeNull()
})

test('finished twice at once it is one home, and the draft is gone', async () => {
  const cat = await someone('cat')
  await saveDraft(as(cat), () => ({ step: 'check', answers: {} }))
  const done = await Promise.all([finishDraft(as(cat), aHousehold()), finishDraft(as(cat), aHousehold())])
  expect(done.filter((one) => one?.ok)).toHaveLength(1)
  expect(done.filter((one) => one === null)).toHaveLength(1)
  expect(await listHomes(cat)).toHaveLength(1)
  expect(await findDraft(cat)).toBeNull()
})

test('what nobody knew is kept beside the home, changes with it, and stays out of the file’s keys', async () => {
  const dan = await someone('dan')
  const assumed = [{ code: 'filter-size' as const, subject: 'hall' }]
  await saveDraft(as(dan), () => ({ step: 'check', answers: {} }))
  await finishDraft(as(dan), aHousehold({ assumed }))
  const [stored] = await listHouseholds(dan)
  expect(stored?.household.assumed).toEqual(assumed)
  if (!stored) return
  const { assumed: _, ...known } = stored.household
  await saveHousehold(as(dan), stored.id, known, stored.revision)
  expect('assumed' in ((await exportHouseholds(dan))[0] ?? {})).toBe(false)
})
