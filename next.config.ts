import type { NextConfig } from 'next'

// A household file of 9 MB must reach the form that says what is wrong with it.
const LARGEST_FORM = '12mb'

export default {
  poweredByHeader: false,
  // Next's development server would write instruction files of its own into the repository.
  agentRules: false,
  // Every page has its title from the start, for whoever is read the title first: Next would send it after the page.
  htmlLimitedBots: /.*/,
  // Types are checked over everything, tests too, by .ci/run: a wrong test must not keep a house from its plan.
  typescript: { ignoreBuildErrors: true },
  experimental: { serverActions: { bodySizeLimit: LARGEST_FORM }, proxyClientMaxBodySize: LARGEST_FORM },
  headers: async () => [
    {
      source: '/:path*',
      headers: [
        { key: 'X-Content-Type-Options', value: 'nosniff' },
        { key: 'Referrer-Policy', value: 'same-origin' },
        { key: 'Permissions-Policy', value: 'camera=(self), geolocation=(), microphone=(), payment=(), usb=()' },
        { key: 'Cross-Origin-Opener-Policy', value: 'same-origin' },
        { key: 'Cross-Origin-Resource-Policy', value: 'same-origin' },
      ],
    },
  ],
} satisfies NextConfig
