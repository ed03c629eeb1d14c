import { betterAuth } from 'better-auth'
import { prismaAdapter } from 'better-auth/adapters/prisma'
import { database } from '@/lib/data/connection'
import { databaseKind } from '@/lib/data/place'
import { isSecure, publicUrl } from './public-url'
import { installationSecret } from './secret'

/** Ninety days: a home is looked at a few times a year. */
const SESSION_SECONDS = 90 * 24 * 60 * 60

type Library = ReturnType<typeof makeLibrary>
let kept: { key: unknown; library: Library } | undefined

/** The account library over our tables. Its own routes are not served and its own limits not used: see sign-in.ts. */
export function library(): Library {
  const key = database()
  if (kept?.key !== key) kept = { key, library: makeLibrary() }
  return kept.library
}

function makeLibrary() {
  return betterAuth({
    appName: 'Plenum',
    baseURL: publicUrl(),
    secret: installationSecret(),
    database: prismaAdapter(database(), { provider: databaseKind() }),
    // Accounts are made by sign-up.ts, together with whatever an invitation gives.
    emailAndPassword: { enabled: true, disableSignUp: true, maxPasswordLength: 200 },
    user: { additionalFields: { administrator: { type: 'boolean', input: false, defaultValue: false } } },
    session: { expiresIn: SESSION_SECONDS, disableSessionRefresh: true, cookieCache: { enabled: false } },
    rateLimit: { enabled: false },
    advanced: {
      cookiePrefix: 'plenum',
      useSecureCookies: isSecure(),
      defaultCookieAttributes: { httpOnly: true, sameSite: 'lax', path: '/' },
      ipAddress: { disableIpTracking: true },
    },
    telemetry: { enabled: false },
    logger: { disabled: true },
  })
}
