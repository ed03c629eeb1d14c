// @ts-check

// Who asks, and by which name, is what a reverse proxy writes into these; without one a visitor could write them
// himself and pass as somebody else (for the sign-in limits, and for links made from the host name).
const CLAIMS = ['forwarded', 'x-real-ip', 'x-forwarded-host', 'x-forwarded-port', 'x-forwarded-proto']

/**
 * Whether a reverse proxy stands in front: said by `TRUST_PROXY`, or implied by an https address, which only one can give.
 * @param {NodeJS.ProcessEnv} env
 */
export function trustsProxy({ TRUST_PROXY, PUBLIC_URL }) {
  return TRUST_PROXY ? !['0', 'false'].includes(TRUST_PROXY) : (PUBLIC_URL ?? '').startsWith('https://')
}

/**
 * Leaves in `headers` only what may be believed, so that `x-forwarded-for` is one address that nobody made up:
 * behind a trusted proxy the last one (it is the proxy's own entry), else the connection's.
 * @param {import('node:http').IncomingHttpHeaders} headers changed in place
 * @param {string | undefined} address the connection's remote address
 * @param {boolean} trustProxy
 */
export function settleForwarded(headers, address, trustProxy) {
  if (!trustProxy) for (const name of CLAIMS) delete headers[name]
  const last = trustProxy ? [headers['x-forwarded-for']].flat().join(',').split(',').at(-1)?.trim() : undefined
  const believed = last || address
  if (believed) headers['x-forwarded-for'] = believed
  else delete headers['x-forwarded-for']
}
