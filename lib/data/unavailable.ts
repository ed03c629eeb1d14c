const SAY = {
  busy: 'The database is busy with something else. Nothing was saved. Wait a minute and try again.',
  'read-only':
    'The database can only be read at the moment. Nothing was saved. Whoever hosts this has to make its file and folder writable.',
  full: 'The disk that holds the database is full. Nothing was saved. Whoever hosts this has to make room.',
  broken:
    'The database file is damaged or is not a database. Nothing was changed. Whoever hosts this has to restore a backup.',
  unreachable:
    'The database cannot be opened. Nothing was saved. Whoever hosts this has to check where it is and who may read it.',
  away: 'The database does not answer. Nothing was saved. Try again in a minute. Whoever hosts this has to look whether it runs.',
  lost: 'The database went away in the middle of this. Wait a minute, and look whether it was saved before you send it again.',
  'not-ready': 'The database is older than this program. Restarting the program brings it up to date.',
} as const

export type Unavailability = keyof typeof SAY

/** The database did not answer, and nothing of the question was saved. `message` is for people; `cause` for whoever hosts it. */
export class DatabaseUnavailable extends Error {
  override name = 'DatabaseUnavailable'
  /** All that a page's error boundary in the browser is told of an error. */
  readonly digest: string
  constructor(
    readonly because: Unavailability,
    cause?: unknown,
  ) {
    super(SAY[because], { cause })
    this.digest = `database-${because}`
  }
}

/** The sentence for people behind an error's digest, or null where the error was another one. */
export function sayUnavailable(digest: string | undefined): string | null {
  const because = digest?.replace(/^database-/, '') ?? ''
  return digest?.startsWith('database-') && Object.hasOwn(SAY, because) ? SAY[because as Unavailability] : null
}

// Prisma wraps what the driver said in several layers, and only the text is always there.
const SIGNS: [RegExp, Unavailability][] = [
  [
    /SQLITE_BUSY|SQLITE_LOCKED|database (table )?is locked|SocketTimeout|P1008|P2028|Unable to start a transaction/i,
    'busy',
  ],
  // PostgreSQL: writers that kept meeting, a lock or a free connection not had in time.
  [
    /P2034|TransactionWriteConflict|\b(40001|40P01|55P03|53300)\b|TooManyConnections|P2037|too many (clients|connections)|timeout exceeded when trying to connect/i,
    'busy',
  ],
  [/SQLITE_READONLY|readonly database|\b25006\b|read-only transaction/i, 'read-only'],
  [/SQLITE_FULL|disk is full|ENOSPC|\b53100\b|No space left/i, 'full'],
  [/SQLITE_CORRUPT|SQLITE_NOTADB|malformed|file is not a database|\bXX00[12]\b/i, 'broken'],
  [
    /SQLITE_CANTOPEN|SQLITE_IOERR|SQLITE_AUTH|unable to open database|disk I\/O error|directory does not exist|EACCES|EROFS/i,
    'unreachable',
  ],
  // A wrong password, account or name of the database, a wrong host, an encryption that cannot be had.
  [
    /\b(28P01|28000|3D000|42501)\b|AuthenticationFailed|DatabaseAccessDenied|DatabaseDoesNotExist|P1000|P1003|P1010|ENOTFOUND|EAI_AGAIN|TlsConnectionError|SSL|certificate|SASL/i,
    'unreachable',
  ],
  [
    /\b57P0[123]\b|ECONNREFUSED|EHOSTUNREACH|ENETUNREACH|ETIMEDOUT|DatabaseNotReachable|P1001|P1002|terminating connection|database system is/i,
    'away',
  ],
  [
    /ECONNRESET|EPIPE|ConnectionClosed|P1017|Connection terminated|Connection ended|\b08[0P]0\d\b|\b25P03\b|not queryable/i,
    'lost',
  ],
  [/no such table|no such column|TableDoesNotExist|ColumnNotFound|P2021|P2022|\b(42P01|42703)\b/i, 'not-ready'],
]

/** All that an error and its causes say, for patterns to look through. */
export function wordsOf(error: unknown, depth = 0): string {
  if (!(error instanceof Error) || depth > 4) return typeof error === 'object' ? JSON.stringify(error) : String(error)
  const { code = '', meta, cause } = error as { code?: string; meta?: unknown; cause?: unknown }
  return [
    error.name,
    code,
    error.message,
    meta ? JSON.stringify(meta) : '',
    cause ? wordsOf(cause, depth + 1) : '',
  ].join(' ')
}

/** The typed error for a database that did not answer; any other error is given back as it is. */
export function asUnavailable(error: unknown): unknown {
  if (error instanceof DatabaseUnavailable) return error
  const said = wordsOf(error)
  const sign = SIGNS.find(([pattern]) => pattern.test(said))
  return sign ? new DatabaseUnavailable(sign[1], error) : error
}
