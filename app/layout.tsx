import type { Metadata, Viewport } from 'next'
import { headers } from 'next/headers'
import { connection } from 'next/server'
import type { ReactNode } from 'react'
import './globals.css'
import { Masthead } from './masthead'
import { OutsideGuide } from './outside-guide'

export const metadata: Metadata = {
  title: { default: 'Plenum', template: '%s · Plenum' },
  description: 'Keeps a home’s heating and cooling running: what is due, when, and why that day.',
}

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#f1f4f5' },
    { media: '(prefers-color-scheme: dark)', color: '#0e161d' },
  ],
}

/** What every page stands in. Pages put `PlaceNav` first and then `<main id="main" tabIndex={-1}>`. */
export default async function Layout({ children }: { children: ReactNode }) {
  // Every page carries the nonce of its own request, so none may be frozen at build time.
  await connection()
  const nonce = /'nonce-([^']+)'/.exec((await headers()).get('content-security-policy') ?? '')?.[1]
  return (
    <html lang="en">
      <body>
        <OutsideGuide>
          <a className="skip" href="#main">
            Skip to the page
          </a>
          <Masthead />
        </OutsideGuide>
        {children}
        <OutsideGuide>
          <footer className="colophon">
            <p>
              Smell gas, or hear a carbon monoxide alarm? Everyone out, touch nothing, and call 911 (or your own
              emergency number) from outside, well away from the house.
            </p>
          </footer>
        </OutsideGuide>
        {process.env.NODE_ENV === 'production' && <script src="/offline.js" nonce={nonce} async />}
      </body>
    </html>
  )
}
