import { z } from 'zod'

const name = z
  .string()
  .max(200)
  // It names where a file is written: never outside the folder.
  .refine((text) => text.split('/').every((part) => part !== '' && part !== '.' && part !== '..'))
  .refine((text) => !/[\\\0]/.test(text))

const manifest = z.strictObject({
  plenumBackup: z.literal(1),
  /** The program's version. */
  version: z.string().max(100),
  madeAt: z.string().max(40),
  /** The names of the migrations that its database has. */
  migrations: z.array(z.string().max(200)),
  /** In the order in which they follow in the archive; the database is `plenum.db`. */
  files: z
    .array(z.strictObject({ name, bytes: z.number().int().min(0), sha256: z.string().regex(/^[0-9a-f]{64}$/) }))
    .refine((files) => new Set(files.map((file) => file.name)).size === files.length)
    .refine((files) => files.some((file) => file.name === 'plenum.db')),
})

/** What a backup says of itself: the first file of its archive. */
export type BackupManifest = z.infer<typeof manifest>

/** Reads `manifest.json` of a backup; null for anything that no backup of ours begins with. */
export function parseBackupManifest(bytes: Uint8Array): BackupManifest | null {
  try {
    const parsed = manifest.safeParse(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)))
    return parsed.success ? parsed.data : null
  } catch {
    return null
  }
}
