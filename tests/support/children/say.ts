import { writeSync } from 'node:fs'

/** Says a line at once: what was said before a kill was really confirmed before it. */
export function say(line: string): void {
  writeSync(1, `${line}\n`)
}
