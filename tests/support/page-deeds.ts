import type { Page } from 'playwright-core'
import { unitsSheet } from './everybody-homes'

/** A button pressed on a form that is not filled in as it must be. */
export const press = (name: string) => async (page: Page) => {
  // A browser that checks nothing by itself: what the server says is looked at.
  await page.evaluate("document.querySelectorAll('form').forEach((form) => { form.noValidate = true })")
  await page.locator('main').getByRole('button', { name, exact: true }).first().click()
  await page.locator('.faults').first().waitFor()
}

/** Brings a sheet of units, and stops where it is shown what is in it. */
export async function bringUnits(page: Page): Promise<void> {
  const buffer = Buffer.from(unitsSheet())
  await page.locator('input[type=file]').setInputFiles({ name: 'units.csv', mimeType: 'text/csv', buffer })
  await page.getByRole('button', { name: 'Show what is in it' }).click()
  await page.locator('.sheet-lines').first().waitFor()
}

/** Keeps the filter card on the phone, and goes to where it is kept. */
export async function keepCard(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Keep it on this phone' }).click()
  await page.getByText('Kept on this phone.').waitFor()
  await page.goto('/find/kept')
  await page.getByText('16 × 25 × 1').waitFor()
}
