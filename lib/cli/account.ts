import { readFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { resetPassword } from '@/lib/access/change-password'
import { createAccountWith } from '@/lib/access/sign-up'
import { now, today } from '@/lib/clock'
import type { Fault } from '@/lib/core/fault'
import type { Household } from '@/lib/core/household'
import { listAccounts } from '@/lib/data/accounts'
import { closeDatabase } from '@/lib/data/connection'
import { instant } from '@/lib/data/instant'
import { confirmAddress } from '@/lib/data/mail-links'
import { prepareDatabase } from '@/lib/data/prepare'
import { DatabaseUnavailable } from '@/lib/data/unavailable'
import { parseHouseholdFile } from '@/lib/forms/household-file'
import { createFeed } from '@/lib/outbound/feed'

const USAGE = `account -- create --email E [--import FILE]   the password from standard input
account -- reset-password --email E            the password from standard input
account -- list`

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
  const problem = prepareDatabase()
  if (problem) throw new Stop([problem])
  if (command === 'list')
    return (await listAccounts({ kind: 'system' })).map((account) => JSON.stringify(account)).join('\n')
  if (!email) throw new Stop(['--email is missing.', USAGE])
  const password = passwordFrom(readFileSync(0, 'utf8'))
  if (command === 'reset-password') {
    const changed = await resetPassword(email, password)
    if (!changed.ok) throw fromFaults(changed.faults)
    return ''
  }
  const made = await createAccountWith({ email, password }, file === undefined ? [] : householdsIn(file))
  if (!made.ok) throw fromFaults(made.faults)
  const viewer = { kind: 'account', accountId: made.accountId, name: email, administrator: false } as const
  // Whoever hosts this typed the address: no mail has to ask whose it is.
  await confirmAddress(made.accountId)
  const feed = await createFeed({ viewer, at: instant(now()), door: 'command' })
  return JSON.stringify({ account: made.accountId, households: made.ids, calendarPath: feed?.path })
}

function read(args: string[]): { command: string; email?: string; file?: string } {
  try {
    const options = { email: { type: 'string' }, import: { type: 'string' } } as const
    const { positionals, values } = parseArgs({ args, options, allowPositionals: true })
    const command = positionals[0] ?? ''
    if (positionals.length === 1 && ['create', 'reset-password', 'list'].includes(command)) {
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

function householdsIn(file: string): Household[] {
  let bytes: Buffer
  try {
    bytes = readFileSync(file)
  } catch {
    throw new Stop([`${file} cannot be read.`])
  }
  const parsed = parseHouseholdFile(bytes, today)
  if (!parsed.ok) throw fromFaults(parsed.faults)
  return parsed.households
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
