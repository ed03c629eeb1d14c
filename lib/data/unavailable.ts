const SAY = {
  busy: 'The database is busy with something else. Nothing was saved. Wait a minute and try again.',
  'read-only':
    'The database can only be read at the moment. Nothing was saved. Whoever hosts this has to make its file and folder writable.',
  full: 'The disk that holds the database is full. Nothing was saved. Whoever hosts this has to make room.',
  broken:
    'The database file is damaged or is not a database. Nothing was changed. Whoever hosts this has to restore a backup.',
  unreachable:
    'The database cannot be opened. Nothing was saved. Whoever hosts this has to check where it is and who may read it.',
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
  [/SQLITE_READONLY|readonly database/i, 'read-only'],
  [/SQLITE_FULL|disk is full|ENOSPC/i, 'full'],
  [/SQLITE_CORRUPT|SQLITE_NOTADB|malformed|file is not a database/i, 'broken'],
  [
    /SQLITE_CANTOPEN|SQLITE_IOERR|SQLITE_AUTH|unable to open database|disk I\/O error|directory does not exist|EACCES|EROFS/i,
    'unreachable',
  ],
  [/no such table|no such column|TableDoesNotExist|ColumnNotFound|P2021|P2022/i, 'not-ready'],
]

function words(error: unknown, depth = 0): string {
  if (!(error instanceof Error) || depth > 4) return typeof error === 'object' ? JSON.stringify(error) : String(error)
  const { code = '', meta, cause } = error as { code?: string; meta?: unknown; cause?: unknown }
  return [error.name, code, error.message, meta ? JSON.stringify(meta) : '', cause ? words(cause, depth + 1) : ''].join(
    ' ',
  )
}

/** The typed error for a database that did not answer; any other error is given back as it is. */
export function asUnavailable(error: unknown): unknown {
  if (error instanceof DatabaseUnavailable) return error
  const said = words(error)
  const sign = SIGNS.find(([pattern]) => pattern.test(said))
  return sign ? new DatabaseUnavailable(sign[1], error) : error
}
