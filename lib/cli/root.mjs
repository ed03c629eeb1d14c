import { fileURLToPath } from 'node:url'

/** The folder of this checkout, whatever folder the command was started in. */
export const ROOT = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '')
