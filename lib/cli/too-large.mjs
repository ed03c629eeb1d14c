// @ts-check

/** What Next reads of a form at most (`next.config.ts`); more than that it would cut off and fail at. */
export const MOST_BYTES = 12 * 1024 * 1024

// These two have limits of their own, and say so on their page.
const OWN_LIMIT = /^\/home\/[^/]+\/(measured\/bring|photos\/add)$/

/**
 * Refuses what says that it is larger than anything that is taken, before a byte of it is read. True where it did.
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 */
export function refuseTooLarge(request, response) {
  const bytes = Number(request.headers['content-length'] ?? 0)
  if (!(bytes > MOST_BYTES) || OWN_LIMIT.test(request.url?.split('?')[0] ?? '')) return false
  response.writeHead(413, { 'content-type': 'text/plain; charset=utf-8', connection: 'close' })
  const way = request.url?.startsWith('/bring')
    ? 'Whoever hosts this can bring a larger one by the command account -- bring.'
    : 'Go back, and send a smaller file.'
  response.end(`This is larger than 12 MB, the most that is taken. ${way}\n`)
  return true
}
