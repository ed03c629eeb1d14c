import { type NextRequest, NextResponse } from 'next/server'

// Everything is forbidden that is not named here. Scripts and styles carry the nonce of their own request; a `style`
// attribute in JSX has none and is refused, which is why drawings use SVG attributes and class names.
function contentSecurityPolicy(nonce: string, development: boolean): string {
  return [
    "default-src 'none'",
    // No 'strict-dynamic': it would let a script run that another script puts into the page.
    // React's development build evaluates text to rebuild server stacks; the production build never does.
    `script-src 'self' 'nonce-${nonce}'${development ? " 'unsafe-eval'" : ''}`,
    // The development server puts styles in as it reloads them.
    `style-src 'self' ${development ? "'unsafe-inline'" : `'nonce-${nonce}'`}`,
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "manifest-src 'self'",
    "worker-src 'self'",
    "form-action 'self'",
    "base-uri 'none'",
    "frame-ancestors 'none'",
  ].join('; ')
}

/** Gives every page its policy, and tells browsers to come back by TLS only where there is TLS. */
export function proxy(request: NextRequest): NextResponse {
  const nonce = btoa(crypto.randomUUID())
  const policy = contentSecurityPolicy(nonce, process.env.NODE_ENV === 'development')
  const headers = new Headers(request.headers)
  headers.set('Content-Security-Policy', policy) // Next reads the nonce from here
  const response = NextResponse.next({ request: { headers } })
  response.headers.set('Content-Security-Policy', policy)
  if (process.env.PUBLIC_URL?.startsWith('https:') || request.headers.get('x-forwarded-proto') === 'https') {
    response.headers.set('Strict-Transport-Security', 'max-age=31536000')
  }
  return response
}

// A thermostat's export passes by: it may be larger than what Next keeps of a request for a proxy to read.
export const config = { matcher: '/((?!_next/static/|home/[^/]+/measured/bring$).*)' }
