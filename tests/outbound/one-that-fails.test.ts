import { expect, test } from 'vitest'
import { learnDue } from '@/app/learn-from-each-other'
import { database } from '@/lib/data/connection'
import { importHouseholds } from '@/lib/data/import'
import { confirmAddress } from '@/lib/data/mail-links'
import { findPooling, listPoolsDue, startPooling } from '@/lib/data/pooled-dust'
import { findReminding, saveReminding } from '@/lib/data/remindings'
import { nextMoment } from '@/lib/outbound/settle-due'
import { aHousehold } from '../support/a-household'
import { expectConsoleError } from '../support/console'
import { AT, as, freshDatabase, someone } from '../support/fresh-database'
import { remindingByMail } from '../support/reminding'

// What is done for many people in turn, where it cannot be done for one of them.

freshDatabase()
const office = remindingByMail()
const { run } = office

/** Somebody with a home that has something to do, reminded on Saturdays. */
async function reminded(name: string, hour: number) {
  const who = await someone(name)
  await confirmAddress(who.accountId)
  await importHouseholds(as(who), [aHousehold({ since: '2026-03-01', records: [] })])
  const when = { weekday: 6, hour, timeZone: 'America/Chicago' }
  await saveReminding(as(who), { mail: true, push: false, ...when, nextAt: nextMoment(when, AT), today: '2026-11-25' })
  return who
}

/** Homes of an account in a zone that no platform knows: nothing about them can be reckoned. */
function spoil(accountId: string, timeZone: string) {
  return database().household.updateMany({ where: { ownerId: accountId }, data: { timeZone } })
}

test('whose reminder cannot be made keeps nobody else waiting, and gets it within an hour once it can be', async () => {
  const mal = await reminded('mal', 8)
  await reminded('ann', 9)
  await spoil(mal.accountId, 'Nowhere/None')
  expectConsoleError(new RegExp(`The reminder of account ${mal.accountId} could not be made`))
  await run('2026-11-28T15:05:00Z')
  expect(office.mails.map(({ to }) => JSON.stringify(to))).toEqual([expect.stringContaining('ann')])
  expect((await findReminding(mal))?.nextAt).toBe('2026-11-28T16:05:00.000Z')

  await spoil(mal.accountId, 'America/Chicago')
  await run('2026-11-28T16:06:00Z')
  await run('2026-11-28T17:06:00Z')
  expect(office.mails.slice(1).map(({ to }) => JSON.stringify(to))).toEqual([expect.stringContaining('mal')])
})

test('an account whose homes cannot learn keeps no other from it', async () => {
  process.env.PLENUM_NOW = AT
  for (const name of ['bea', 'cas']) {
    const who = await someone(name)
    await importHouseholds(as(who), [aHousehold()])
    await startPooling(who.accountId)
  }
  const [first = '', second = ''] = await listPoolsDue('2026-11-25')
  await spoil(first, 'Nowhere/None')
  expectConsoleError(new RegExp(`Homes of account ${first} did not learn`))
  await learnDue()
  expect(await listPoolsDue('2026-11-25')).toEqual([first])
  expect(await findPooling(second)).toEqual({ pools: true, on: '2026-11-25' })
})
