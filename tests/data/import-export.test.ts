import fc from 'fast-check'
import { expect, test } from 'vitest'
import { exportHouseholds, findHousehold, listHomes } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { parseHouseholdFile, writeHouseholdFile } from '@/lib/forms/household-file'
import { aHousehold } from '../support/a-household'
import { ARBITRARY_TODAY, households } from '../support/arbitrary-household'
import { as, freshDatabase, someone } from '../support/fresh-database'

freshDatabase()

test('whatever a file says comes out again, field for field and in its order', async () => {
  let number = 0
  await fc.assert(
    fc.asyncProperty(households(), async (file) => {
      const ann = await someone(`equal-${number++}`)
      const imported = await importHouseholds(as(ann), file)
      expect(imported.ok).toBe(true)
      expect(await exportHouseholds(ann)).toStrictEqual(file)
    }),
    { numRuns: 60 },
  )
}, 60_000)

test('a file that was parsed, imported, exported and written is the same file', async () => {
  let number = 0
  await fc.assert(
    fc.asyncProperty(households(2), async (made) => {
      const text = writeHouseholdFile(made)
      const parsed = parseHouseholdFile(text, ARBITRARY_TODAY)
      expect(parsed).toMatchObject({ ok: true })
      const ann = await someone(`file-${number++}`)
      await importHouseholds(as(ann), parsed.ok ? parsed.households : [])
      expect(writeHouseholdFile(await exportHouseholds(ann))).toBe(text)
    }),
    { numRuns: 40 },
  )
}, 60_000)

test('an id that is there already refuses the whole file, naming where it stands', async () => {
  const bea = await someone('bea')
  await importHouseholds(as(bea), [aHousehold()])
  const again = await importHouseholds(as(bea), [aHousehold({ id: 'fern-1' }), aHousehold()])
  expect(again).toEqual({
    ok: false,
    faults: [{ path: 'households[1].id', say: expect.stringContaining('larkspur-2') }],
  })
  expect(await listHomes(bea)).toHaveLength(1)
})

test('an id that stands twice in one file is a fault', async () => {
  const cal = await someone('cal')
  const imported = await importHouseholds(as(cal), [aHousehold(), aHousehold()])
  expect(imported.ok).toBe(false)
  expect(await listHomes(cal)).toEqual([])
})

test('two accounts may each have a household with the same id', async () => {
  const dan = await someone('dan')
  const eve = await someone('eve')
  const [first] = ids(await importHouseholds(as(dan), [aHousehold()]))
  const [second] = ids(await importHouseholds(as(eve), [aHousehold({ name: 'Another' })]))
  expect((await findHousehold(dan, first ?? ''))?.name).toBe('Larkspur Court 2')
  expect((await findHousehold(eve, second ?? ''))?.name).toBe('Another')
})

test('a thousand homes come in and go out equal', async () => {
  const landlord = await someone('landlord')
  const many = Array.from({ length: 1000 }, (_, i) => aHousehold({ id: `unit-${i}` }))
  await importHouseholds(as(landlord), many)
  expect(await exportHouseholds(landlord)).toStrictEqual(many)
}, 30_000)

function ids(imported: Awaited<ReturnType<typeof importHouseholds>>): string[] {
  return imported.ok ? imported.ids : []
}
