import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { chromium } from 'playwright-core'
import sharp from 'sharp'
import { ROOT } from '@/lib/cli/root.mjs'
import { startApp } from './app'
import { ensureChromium } from './chromium.mjs'

// `npm run pictures`: the pictures of the README, taken from the built app and its first sample home. The day is held
// still, so that they change only when the page does.
const NOW = '2026-11-25T18:00:00Z'
const PICTURES = [
  { name: 'desk', width: 1280, height: 1000, scale: 1.5 },
  { name: 'phone', width: 390, height: 1100, scale: 2 },
]
const LIMIT_BYTES = 400_000

const executablePath = ensureChromium()
if (!executablePath) throw new Error('The pictures need a Chromium browser: install one, or name it by CHROMIUM.')
const folder = join(ROOT, 'public/pictures')
mkdirSync(folder, { recursive: true })
const app = await startApp({ env: { PLENUM_NOW: NOW } })
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu', '--no-first-run'] })
try {
  for (const { name, width, height, scale } of PICTURES) {
    const viewport = { width, height }
    const page = await browser.newPage({
      viewport,
      deviceScaleFactor: scale,
      colorScheme: 'light',
      baseURL: app.address,
    })
    await page.goto('/sample')
    const first = await page.locator('main a[href^="/sample/"]').first().getAttribute('href')
    await page.goto(first ?? '/sample', { waitUntil: 'networkidle' })
    const taken = await page.screenshot({ animations: 'disabled' })
    const { size } = await sharp(taken)
      .png({ palette: true, effort: 10 })
      .toFile(join(folder, `${name}.png`))
    if (size > LIMIT_BYTES) throw new Error(`${name}.png has ${size} bytes, and the README should open fast.`)
    console.log(`public/pictures/${name}.png: ${Math.round(size / 1000)} kB, ${width} × ${height}`)
  }
} finally {
  await browser.close()
  await app.stop()
}
