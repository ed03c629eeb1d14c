import { PrismaPg } from '@prisma/adapter-pg'
import { WrongAddress } from './place'
import { storable } from './storable'

// A process that hangs, or a machine that lost its power, must not hold what others wait for; longer than a
// transaction of ours may take.
const IDLE_IN_TRANSACTION_MS = 150_000
const WAIT_FOR_A_LOCK_MS = 30_000
const WAIT_FOR_A_CONNECTION_MS = 10_000

/** How many connections one process opens at most: `DATABASE_POOL`, else 10. Throws `WrongAddress`. */
export function poolSize(env: NodeJS.ProcessEnv = process.env): number {
  const size = Number(env.DATABASE_POOL || 10)
  if (Number.isInteger(size) && size >= 2 && size <= 500) return size
  throw new WrongAddress(`DATABASE_POOL is "${env.DATABASE_POOL}", but it is a whole number from 2 to 500.`)
}

/** The way to a PostgreSQL server. Connections are opened when they are needed, and anew after they broke. */
export function postgresAdapter(url: string): PlainPostgres {
  return new PlainPostgres(
    {
      connectionString: url,
      max: poolSize(),
      application_name: 'plenum',
      keepAlive: true,
      connectionTimeoutMillis: WAIT_FOR_A_CONNECTION_MS,
      lock_timeout: WAIT_FOR_A_LOCK_MS,
      idle_in_transaction_session_timeout: IDLE_IN_TRANSACTION_MS,
    },
    // A connection that broke while nobody used it is nobody's fault: the next question opens another.
    { onPoolError: () => {}, onConnectionError: () => {} },
  )
}

type Connection = Awaited<ReturnType<PrismaPg['connect']>>
type Asked = Pick<Connection, 'queryRaw' | 'executeRaw'>

/** PostgreSQL refuses a statement for one character that no text can hold: here it is asked with another in its place. */
class PlainPostgres extends PrismaPg {
  override async connect(): Promise<Connection> {
    const connection = await super.connect()
    const { startTransaction } = connection
    connection.startTransaction = async (isolation) => plainly(await startTransaction.call(connection, isolation))
    return plainly(connection)
  }
}

function plainly<T extends Asked>(asked: T): T {
  const { queryRaw, executeRaw } = asked
  asked.queryRaw = (query) => queryRaw.call(asked, { ...query, args: query.args.map(storable) })
  asked.executeRaw = (query) => executeRaw.call(asked, { ...query, args: query.args.map(storable) })
  return asked
}
