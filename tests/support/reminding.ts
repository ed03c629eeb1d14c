import { afterEach, beforeEach } from 'vitest'
import { tables } from '@/content/tables'
import { planHousehold } from '@/lib/core/plan'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import { keepPlans } from '@/lib/data/kept-plans'
import { runReminders } from '@/lib/outbound/runner'
import { openPostOffice, type PostOffice } from './post-office'

/** A post office of its own for each test of the file, and one pass of the reminders at a moment. */
export function remindingByMail() {
  const plans = keepPlans<HouseholdPlan>((stored, on) => planHousehold(stored.household, tables, on), { version: 1 })
  let office: PostOffice
  beforeEach(async () => {
    office = await openPostOffice()
    process.env.SMTP_URL = office.url
    process.env.MAIL_FROM = 'plenum@example.org'
  })
  afterEach(() => {
    delete process.env.PLENUM_NOW
    return office.close()
  })
  return {
    get mails() {
      return office.mails
    },
    run(at: string) {
      process.env.PLENUM_NOW = at
      return runReminders({ plans, freezeWatch: [] })
    },
  }
}
