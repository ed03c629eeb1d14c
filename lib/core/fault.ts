/** One thing wrong with an input: where it stands (`household.people`, empty for the whole) and what to do, in plain words. */
export interface Fault {
  path: string
  say: string
}
