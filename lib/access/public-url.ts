/** The address in links, without a slash at the end: `PUBLIC_URL`, else this machine's own. */
export function publicUrl(): string {
  return (process.env.PUBLIC_URL || `http://localhost:${process.env.PORT || 3000}`).replace(/\/+$/, '')
}

/** Whether browsers reach this over TLS: cookies are Secure then. */
export function isSecure(): boolean {
  return publicUrl().startsWith('https://')
}

/** Whether a reverse proxy stands in front, whose headers may be believed: said by `TRUST_PROXY`, or implied by https. */
export function hasProxy(): boolean {
  const said = process.env.TRUST_PROXY
  return said ? said !== '0' && said !== 'false' : isSecure()
}

/**
 * The address that a request came from, or `direct`. Anybody can send X-Forwarded-For: only its last entry, written by
 * our own proxy, is worth anything, and only where there is one.
 */
export function addressOf(headers: Headers): string {
  const entries = hasProxy() ? (headers.get('x-forwarded-for') ?? '').split(',') : []
  return entries.at(-1)?.trim() || 'direct'
}

/** Whether a write was sent by one of our own pages. Every browser says where it sends from; silence is refused. */
export function isSameOrigin(headers: Headers): boolean {
  const origin = headers.get('origin')
  if (!origin) return headers.get('sec-fetch-site') === 'same-origin'
  const host = (hasProxy() ? headers.get('x-forwarded-host') : null) ?? headers.get('host')
  const own = [publicUrl(), `http://${host}`, ...(isSecure() ? [`https://${host}`] : [])]
  return own.some((address) => URL.canParse(address) && new URL(address).origin === origin)
}
