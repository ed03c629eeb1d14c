import type { SessionCookie } from '@/lib/access/sign-in'

/** What a browser sends: its cookies, and that one of our own pages sent it. */
export function sentWith(cookies: SessionCookie[] | null = [], more: Record<string, string> = {}): Headers {
  const cookie = (cookies ?? []).map(({ name, value }) => `${name}=${value}`).join('; ')
  return new Headers({ host: 'localhost:3000', origin: 'http://localhost:3000', ...(cookie && { cookie }), ...more })
}
