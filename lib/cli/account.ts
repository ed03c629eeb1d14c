import { readFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { createApiToken } from '@/lib/access/api-tokens'
import { resetPassword } from '@/lib/access/change-password'
import { plainEmail } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import { now, today } from '@/lib/clock'
import type { Fault } from '@/lib/core/fault'
import { findAccountByEmail, listAccounts } from '@/lib/data/accounts'
import { importArchive, keepable } from '@/lib/data/brought-photos'
import { closeDatabase } from '@/lib/data/connection'
import { importHouseholds } from '@/lib/data/import'
import { instant } from '@/lib/data/instant'
import { confirmAddress } from '@/lib/data/mail-links'
import { prepareDatabase } from '@/lib/data/prepare'
import { DatabaseUnavailable } from '@/lib/data/unavailable'
import { readBrought } from '@/lib/forms/household-archive'
import { createFeed } from '@/lib/outbound/feed'

const USAGE = `account -- create --email E [--import FILE]   the password from standard input
account -- bring --email E --import FILE       a household file or archive into an account that is there
account -- reset-password --email E            the password from standard input
account -- list`

// Ten times what a page reads: here nobody else waits for it.
const LIMIT_BYTES = 90_000_000

/** Ends the command with these lines on standard error. */
class Stop extends Error {
  constructor(readonly lines: string[]) {
    super(lines.join('\n'))
  }
}

function fromFaults(faults: Fault[]): Stop {
  return new Stop(faults.map(({ path, say }) => (path ? `${path}: ${say}` : say)))
}

async function run(args: string[]): Promise<string> {
  const { command, email, file } = read(args)
  const problem = await prepareDatabase()
  if (problem) throw new Stop([problem])
  if (command === 'list')
    return (await listAccounts({ kind: 'system' })).map((account) => JSON.stringify(account)).join('\n')
  if (!email) throw new Stop(['--email is missing.', USAGE])
  if (command === 'bring') return JSON.stringify({ households: await bring(email, file) })
  const password = passwordFrom(readFileSync(0, 'utf8'))
  if (command === 'reset-password') {
    const changed = await resetPassword(email, password)
    if (!changed.ok) throw fromFaults(changed.faults)
    return ''
  }
  const { households, photos } = file === undefined ? { households: [], photos: [] } : broughtBy(file)
  const decoded = await keepable(photos)
  if (!decoded.ok) throw fromFaults(decoded.faults)
  const made = await createAccountWith({ email, password }, households, decoded.kept)
  if (!made.ok) throw fromFaults(made.faults)
  const viewer = { kind: 'account', accountId: made.accountId, name: email, administrator: false } as const
  // Whoever hosts this typed the address: no mail has to ask whose it is.
  await confirmAddress(made.accountId)
  const act = { viewer, at: instant(now()), door: 'command' } as const
  const feed = await createFeed(act)
  const token = await createApiToken(act, 'Made with the account')
  return JSON.stringify({
    account: made.accountId,
    households: made.ids,
    calendarPath: feed?.path,
    apiToken: token.ok ? token.token : undefined,
  })
}

function read(args: string[]): { command: string; email?: string; file?: string } {
  try {
    const options = { email: { type: 'string' }, import: { type: 'string' } } as const
    const { positionals, values } = parseArgs({ args, options, allowPositionals: true })
    const command = positionals[0] ?? ''
    if (positionals.length === 1 && ['create', 'bring', 'reset-password', 'list'].includes(command)) {
      return { command, email: values.email, file: values.import }
    }
    throw new Stop([USAGE])
  } catch (error) {
    throw error instanceof Stop ? error : new Stop([(error as Error).message, USAGE])
  }
}

// A terminal and `echo` end the line; the line end is no part of the password.
function passwordFrom(input: string): string {
  return input.replace(/\r?\n$/, '')
}

/** As the page does it, but for its limits of size. Gives the ids of the homes. */
async function bring(email: string, file: string | undefined): Promise<string[]> {
  if (file === undefined) throw new Stop(['--import is missing.', USAGE])
  const { households, photos } = broughtBy(file)
  const found = await findAccountByEmail(plainEmail(email))
  if (!found) throw new Stop([`There is no account for ${plainEmail(email)}.`])
  const { id, ...rest } = found
  const act = { viewer: { kind: 'account', accountId: id, ...rest }, at: instant(now()), door: 'command' } as const
  const [home] = households
  const brought = home && photos.length > 0 ? importArchive(act, home, photos) : importHouseholds(act, households)
  const imported = await brought
  if (!imported.ok) throw fromFaults(imported.faults)
  return imported.ids
}

function broughtBy(file: string) {
  let bytes: Buffer
  try {
    bytes = readFileSync(file)
  } catch {
    throw new Stop([`${file} cannot be read.`])
  }
  const parsed = readBrought(bytes, { on: today, now: instant(now()), limitBytes: LIMIT_BYTES })
  if (!parsed.ok) throw fromFaults(parsed.faults)
  return parsed
}

try {
  const said = await run(process.argv.slice(2))
  if (said) console.log(said)
} catch (error) {
  if (!(error instanceof Stop || error instanceof DatabaseUnavailable)) throw error
  console.error(error.message)
  process.exitCode = 2
} finally {
  await closeDatabase()
}
