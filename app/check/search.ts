type Params = Record<string, string | string[] | undefined>

/** The question part of an address, as the browser shows it: `?flow=no-heat&at=…`, or `''`. */
export function searchOf(params: Params): string {
  const fields = Object.entries(params).flatMap(([name, value]) =>
    [value ?? []].flat().map((each): [string, string] => [name, each]),
  )
  return fields.length === 0 ? '' : `?${new URLSearchParams(fields)}`
}
