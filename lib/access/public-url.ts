/** The address in links, without a slash at the end: `PUBLIC_URL`, else this machine's own. */
export function publicUrl(): string {
  return (process.env.PUBLIC_URL || `http://localhost:${process.env.PORT || 3000}`).replace(/\/+$/, '')
}

/** Whether browsers reach this over TLS: cookies are Secure then. */
export function isSecure(): boolean {
  return publicUrl().startsWith('https://')
}

/**
 * The address that a request came from, or `direct`. Anybody can send X-Forwarded-For; our server lets only what may be
 * believed through (lib/cli/forwarded.mjs), and a proxy's own entry is always the last.
 */
export function addressOf(headers: Headers): string {
  return (headers.get('x-forwarded-for') ?? '').split(',').at(-1)?.trim() || 'direct'
}

/** Whether a write was sent by one of our own pages. Every browser says where it sends from; silence is refused. */
export function isSameOrigin(headers: Headers): boolean {
  const origin = headers.get('origin')
  if (!origin) return headers.get('sec-fetch-site') === 'same-origin'
  // No page of another site can make a browser send these two.
  const host = headers.get('x-forwarded-host') ?? headers.get('host')
  const own = [publicUrl(), `http://${host}`, ...(isSecure() ? [`https://${host}`] : [])]
  return own.some((address) => URL.canParse(address) && new URL(address).origin === origin)
}
