import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'

type Connection = Awaited<ReturnType<PrismaBetterSqlite3['connect']>>

/**
 * The adapter runs questions asked outside a transaction on the same connection, so that one asked while a
 * transaction waits would join it: read what is not yet written, or be rolled back with it. Here each waits its turn.
 */
export class FencedSqlite extends PrismaBetterSqlite3 {
  override async connect(): Promise<Connection> {
    const connection = await super.connect()
    // FULL: with NORMAL a power cut may lose what was already confirmed.
    await connection.executeScript('PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA busy_timeout = 5000;')
    return fence(connection)
  }
}

function fence(connection: Connection): Connection {
  let last = Promise.resolve()
  function turn(): Promise<() => void> {
    const before = last
    let leave = () => {}
    last = new Promise((resolve) => {
      leave = resolve
    })
    return before.then(() => leave)
  }

  const { queryRaw, executeRaw, startTransaction } = connection
  connection.queryRaw = async (query) => {
    const leave = await turn()
    return queryRaw.call(connection, query).finally(leave)
  }
  connection.executeRaw = async (query) => {
    const leave = await turn()
    return executeRaw.call(connection, query).finally(leave)
  }
  connection.startTransaction = async (isolation) => {
    const leave = await turn()
    const transaction = await startTransaction.call(connection, isolation).catch((error) => {
      leave()
      throw error
    })
    const { commit, rollback } = transaction
    transaction.commit = () => commit.call(transaction).finally(leave)
    transaction.rollback = () => rollback.call(transaction).finally(leave)
    return transaction
  }
  return connection
}
