import { tables } from '@/content/tables'
import { today } from '@/lib/clock'
import type { Household } from '@/lib/core/household'
import { plan } from '@/lib/core/plan'
import { planJson } from '@/lib/core/plan-json'
import { pooledHomes } from '@/lib/core/pooled-homes'
import { parseHouseholdFile } from '@/lib/forms/household-file'
import { planArguments, USAGE } from './plan-arguments'

import { planText } from './plan-text'
import { readInput, unreadable } from './read-input'

const FAULT = 2

/** The command `plan`: its exit status. Faults go to standard error, one a line, and leave standard output empty. */
async function main(args: readonly string[]): Promise<number> {
  const given = planArguments(args)
  if (!given.ok) return faults([given.say, USAGE])
  const { file, on, asText, model } = given.value
  const name = file === '-' ? 'standard input' : file

  let bytes: Uint8Array
  try {
    bytes = await readInput(file, process.stdin)
  } catch (error) {
    return faults([`${name}: ${unreadable(error)}`, USAGE])
  }
  const read = parseHouseholdFile(bytes, on ?? today)
  if (!read.ok) return faults(read.faults.map(({ path, say }) => `${path || name}: ${say}`))

  const day = on ?? ((household: Household) => today(household.timeZone))
  const households = model === '1.1' ? pooledHomes(read.households, tables, day) : read.households
  const made = plan(households, tables, day)
  const columns = process.stdout.columns ?? 100
  if (asText) process.stdout.write(planText(made, read.households, columns))
  else for (const piece of planJson(made)) process.stdout.write(piece)
  return 0
}

function faults(lines: readonly string[]): number {
  process.stderr.write(`${lines.join('\n')}\n`)
  return FAULT
}

// Whoever reads only the first lines, `| head`, has had enough: no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
})

// The status is left for the process to end with, once all output is written; `exit()` would cut a long plan short.
process.exitCode = await main(process.argv.slice(2))
// Standard input may still be open where it was too long to be read to its end.
process.stdin.destroy()
