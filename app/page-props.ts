/** What Next hands to a page, by hand: its own generated types are there only after a build. */
export interface PageProps<P extends Record<string, string> = Record<never, string>> {
  params: Promise<P>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}
