import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { closeDatabase } from '@/lib/data/connection'
import { migrate } from '@/lib/data/migrate'
import { killImports } from '../support/kills/import'
import type { Survived } from '../support/kills/kill'
import { killMails } from '../support/kills/mail'
import { fullDatabase, killMigrations } from '../support/kills/migration'
import { killPhotos } from '../support/kills/photo'
import { cutPowers } from '../support/kills/power-cut'
import { killRecords } from '../support/kills/record'
import { openPostOffice } from '../support/post-office'
import { killApp } from './kill-app'
import { middle, type Row } from './table'

const TIMES = Number(process.env.FAULTS || 50)
const within = (most: number) => ({ times: TIMES, pause: () => Math.random() * most })

/** Kills and power cuts, fifty each and at random moments; CI does ten of each at fixed ones. */
export async function faultRows(): Promise<Row[]> {
  return [
    verdict('bringing files of 50 homes', await onNewDatabase(() => killImports(within(1500)))),
    verdict('recording', await onNewDatabase(() => killRecords(within(400)))),
    await migrations(),
    verdict('photos', await onNewDatabase(() => killPhotos(within(1500)))),
    await mails(),
    verdict('recording, the power cut, files torn', await onNewDatabase((place) => cutPowers(place, within(400)))),
    ...(await app()),
  ]
}

async function onNewDatabase<T>(run: (place: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'plenum-faults-'))
  process.env.DATA_DIR = folder
  process.env.DATABASE_URL = `file:${join(folder, 'plenum.db')}`
  migrate()
  try {
    return await run(folder)
  } finally {
    await closeDatabase()
    rmSync(folder, { recursive: true, force: true })
  }
}

function verdict(what: string, { confirmed, lost, torn }: Survived, goal = 'none lost, none half there'): Row {
  const faults = [...lost.map((one) => `lost ${one}`), ...torn.map((one) => `half there ${one}`)]
  return {
    what: `${what}: killed ${TIMES} times`,
    figure: `${confirmed} confirmed; ${faults.length === 0 ? 'none lost, none half there' : faults.slice(0, 3).join(', ')}`,
    goal,
    meets: faults.length === 0 && confirmed > 0,
  }
}

async function migrations(): Promise<Row> {
  const survived = await onNewDatabase(async (place) =>
    killMigrations(await fullDatabase(place), { times: TIMES, share: () => Math.random() }),
  )
  const { figure, ...row } = verdict('a migration of 400 homes and 40,000 entries', survived)
  return { ...row, figure: figure.replace('confirmed', 'cut in the middle and done whole by the next start') }
}

async function mails(): Promise<Row> {
  const office = await openPostOffice()
  process.env.SMTP_URL = office.url
  process.env.MAIL_FROM = 'plenum@example.org'
  try {
    const survived = await onNewDatabase(() => killMails(office, within(250)))
    const { figure, ...row } = verdict('sending mails', survived, 'none lost, none three times')
    return { ...row, figure: `${figure}; ${survived.twice} came twice as one` }
  } finally {
    await office.close()
  }
}

async function app(): Promise<Row[]> {
  const survived = await onNewDatabase(() => killApp(within(1500)))
  const starts = survived.starts.slice(1)
  return [
    verdict('the app itself, four connections recording', survived),
    {
      what: 'start after a kill, nothing to build: the middle one and the longest',
      figure: `${(middle(starts) / 1000).toFixed(1)} and ${(Math.max(...starts) / 1000).toFixed(1)} s`,
    },
  ]
}
