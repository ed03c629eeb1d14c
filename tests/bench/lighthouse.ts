import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import lighthouse from 'lighthouse'
import { closeDatabase } from '@/lib/data/connection'
import { migrate } from '@/lib/data/migrate'
import { cookieText } from '../support/a-browser'
import { findChromium } from '../support/chromium.mjs'
import { everyPage, type Shown } from '../support/every-page'
import { EVERYBODY_ENV, everybodyThere, type There } from '../support/everybody-there'
import { serve } from './server'
import type { Row } from './table'

const CATEGORIES = ['accessibility', 'best-practices']
const SCREENS = {
  phone: { mobile: true, width: 390, height: 844, deviceScaleFactor: 2, disabled: false },
  desk: { mobile: false, width: 1280, height: 900, deviceScaleFactor: 1, disabled: false },
} as const
type Screen = keyof typeof SCREENS

/** A browser of this run's own, and the port that it is spoken to by. */
async function browser(folder: string): Promise<{ port: number; end(): Promise<void> }> {
  const executable = findChromium()
  if (!executable) throw new Error('no chromium: `npm test` installs one or says how')
  const flags = ['--headless=new', '--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking']
  const place = [`--user-data-dir=${folder}`, '--remote-debugging-port=0', 'about:blank']
  const child = spawn(executable, [...flags, ...place], { stdio: 'ignore' })
  const ended = once(child, 'exit')
  const file = join(folder, 'DevToolsActivePort')
  while (!existsSync(file) && child.exitCode === null) await wait(50)
  const port = Number(readFileSync(file, 'utf8').split('\n')[0])
  return {
    port,
    async end() {
      child.kill()
      await ended
    },
  }
}

interface Judged {
  shown: Shown
  /** By category, 0–100. */
  scores: number[]
  /** What was found wrong, by the audit's id. */
  audits: string[]
}

async function judge(
  shown: Shown,
  screen: Screen,
  with_: { port: number; address: string; there: There },
): Promise<Judged> {
  const cookie = cookieText(with_.there.cookies[shown.who])
  const result = await lighthouse(`${with_.address}${shown.path}`, {
    port: with_.port,
    logLevel: 'error',
    onlyCategories: CATEGORIES,
    formFactor: screen === 'phone' ? 'mobile' : 'desktop',
    screenEmulation: SCREENS[screen],
    // Nothing is timed or slowed down here: the page is judged as it stands once it is quiet.
    throttlingMethod: 'simulate',
    pauseAfterFcpMs: 200,
    disableFullPageScreenshot: true,
    pauseAfterLoadMs: 200,
    networkQuietThresholdMs: 300,
    cpuQuietThresholdMs: 300,
    ...(cookie && { extraHeaders: { cookie } }),
  })
  if (!result) throw new Error(`nothing was found out about ${shown.path}`)
  const { categories, audits, runtimeError, finalDisplayedUrl } = result.lhr
  if (runtimeError) throw new Error(`${shown.path}: ${runtimeError.message}`)
  const at = new URL(finalDisplayedUrl)
  if (at.pathname + at.search !== shown.path) throw new Error(`${shown.path} leads to ${at.pathname}`)
  const weighed = CATEGORIES.flatMap((id) => categories[id]?.auditRefs.filter(({ weight }) => weight > 0) ?? [])
  return {
    shown,
    scores: CATEGORIES.map((id) => Math.round((categories[id]?.score ?? 0) * 100)),
    audits: [...new Set(weighed.map(({ id }) => id))].filter((id) => {
      const score = audits[id]?.score
      return score !== null && score !== undefined && score < 1
    }),
  }
}

/** Lighthouse's word on accessibility and good practice of every page. */
export async function lighthouseRows(screen: Screen): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'plenum-lighthouse-'))
  const profile = mkdtempSync(join(tmpdir(), 'plenum-profile-'))
  Object.assign(process.env, EVERYBODY_ENV, { DATA_DIR: folder, DATABASE_URL: `file:${join(folder, 'plenum.db')}` })
  await migrate()
  const there = await everybodyThere()
  await closeDatabase()
  const [server, { port, end }] = [await serve(), await browser(profile)]
  // Once for everybody who sees it otherwise.
  const all = everyPage(there).filter(({ deed, leadsTo }) => !deed && !leadsTo)
  const pages = all.filter(
    (page, i) => all.findIndex(({ route, who }) => route === page.route && who === page.who) === i,
  )
  const found: Judged[] = []
  try {
    for (const page of pages) found.push(await judge(page, screen, { port, there, address: server.address }))
  } finally {
    await end()
    await server.stop()
    for (const each of [folder, profile]) rmSync(each, { recursive: true, force: true })
  }
  const short = found.filter(({ scores }) => scores.some((score) => score < 100))
  const routes = new Set(pages.map(({ route }) => route)).size
  return [
    {
      what: `on a ${screen}: ${routes} pages by all who see them, 100 for accessibility and 100 for best practices`,
      figure: `${found.length - short.length} of ${found.length}`,
      goal: 'all',
      meets: short.length === 0,
    },
    ...short.map(({ shown, scores, audits }) => ({
      what: `on a ${screen}: ${shown.route}, ${shown.who}`,
      figure: `${scores.join(' and ')}: ${audits.join(', ')}`,
    })),
  ]
}
