// Loaded before the app by `--import`: notes every statement that it asks of an embedded database, with its values.
import { appendFileSync } from 'node:fs'
import { createRequire } from 'node:module'

const Database = createRequire(import.meta.url)('better-sqlite3')
const { prepare } = Database.prototype
Database.prototype.prepare = function (text) {
  const statement = prepare.call(this, text)
  let bound = []
  const { bind } = statement
  statement.bind = function (...values) {
    bound = values.flat()
    return bind.apply(this, values)
  }
  for (const way of ['all', 'get', 'run', 'iterate']) {
    const asked = statement[way]
    statement[way] = function (...values) {
      const noted = { text, values: [...bound, ...values], reads: statement.reader }
      const line = JSON.stringify(noted, (_, value) => (typeof value === 'bigint' ? Number(value) : value))
      appendFileSync(process.env.NOTED_STATEMENTS, `${line}\n`)
      return asked.apply(this, values)
    }
  }
  return statement
}
