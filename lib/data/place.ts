import { join, resolve } from 'node:path'

// The comments in the calls tell the bundler that no file below is a part of the program.

/** The folder that holds everything the product writes: `DATA_DIR`, else `./data`. */
export function dataFolder(): string {
  return resolve(/* turbopackIgnore: true */ process.env.DATA_DIR || 'data')
}

/** The address of the database: `DATABASE_URL`, else a file in the data folder. */
export function databaseUrl(): string {
  return process.env.DATABASE_URL || `file:${join(dataFolder(), 'plenum.db')}`
}

/** The file behind a `file:` address, as an absolute path. Throws for any other kind of address. */
export function databaseFile(url = databaseUrl()): string {
  if (!url.startsWith('file:')) {
    // The address may hold a password: only its kind is repeated.
    throw new Error(
      `DATABASE_URL starts with "${url.split(':')[0]}:", and only "file:" is known here, like file:./data/plenum.db.`,
    )
  }
  return resolve(/* turbopackIgnore: true */ url.slice('file:'.length).replace(/\?.*$/, ''))
}

/** Where the migrations of the database's kind lie in the program's folder. */
export function migrationsFolder(): string {
  return resolve('prisma', 'sqlite', 'migrations')
}
