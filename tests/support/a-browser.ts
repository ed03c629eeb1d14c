import type { SessionCookie } from '@/lib/access/sign-in'

/** Cookies as the header that a browser sends them in; empty for none. */
export function cookieText(cookies: readonly { name: string; value: string }[] | null): string {
  return (cookies ?? []).map(({ name, value }) => `${name}=${value}`).join('; ')
}

/** What a browser sends: its cookies, and that one of our own pages sent it. */
export function sentWith(cookies: SessionCookie[] | null = [], more: Record<string, string> = {}): Headers {
  const cookie = cookieText(cookies)
  return new Headers({ host: 'localhost:3000', origin: 'http://localhost:3000', ...(cookie && { cookie }), ...more })
}
