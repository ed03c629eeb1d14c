import { resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { type Moved, moveDatabase } from '@/lib/data/move'
import { databaseUrl, dataFolder, shownAddress } from '@/lib/data/place'
import { copyFilesBeside } from './copy-files'
import { plainly } from './plainly'
import { endPlainly, Refused } from './refused'

const USAGE = `move -- --to ADDRESS [--from ADDRESS] [--files FOLDER]
  everything from a database into an empty one of the other kind: file:./data/plenum.db or postgresql://…
  --from   the database to move, else the one of DATABASE_URL
  --files  copies photos, secret and keys of DATA_DIR into this folder too; without it they stay where they are`

await endPlainly(async () => {
  const { from, to, files } = read(process.argv.slice(2))
  // First, so that where there is no room for them nothing else was done either.
  const copied = files === undefined ? null : await copyFilesBeside(dataFolder(), files)
  const moved = await plainly(() => moveDatabase({ from, to }))
  return [
    ...told(moved),
    ...(copied === null ? [] : [`${copied} files copied to ${files} and compared.`]),
    next(to, files),
  ].join('\n')
})

function read(args: string[]): { from: string; to: string; files?: string } {
  try {
    const text = { type: 'string' } as const
    const { values } = parseArgs({ args, options: { from: text, to: text, files: text } })
    if (!values.to) throw new Error('--to is missing.')
    const from = values.from ?? databaseUrl()
    shownAddress(from)
    shownAddress(values.to)
    return { from, to: values.to, files: values.files && resolve(values.files) }
  } catch (error) {
    throw new Refused(`${(error as Error).message}\n${USAGE}`)
  }
}

function told({ tables, homes, again }: Moved): string[] {
  const rows = tables.map(
    ({ name, rows, sha256 }) => `${name.padEnd(14)} ${String(rows).padStart(9)} rows  sha256 ${sha256.slice(0, 16)}`,
  )
  const first = again ? ['A move that was cut off before was begun again from nothing.'] : []
  return [
    ...first,
    ...rows,
    `Every table has the same rows in both, and ${homes} of ${homes} homes the same household file.`,
  ]
}

function next(to: string, files: string | undefined): string {
  const folder = files === undefined ? '' : ` and DATA_DIR=${files}`
  return `Moved to ${shownAddress(to)}. Start Plenum with that DATABASE_URL${folder} from now on; the old one is as it was. Never start Plenum on both with one DATA_DIR: each clears away photos that it does not know.`
}
