import { profiles } from '@/app/plans'
import { tables } from '@/content/tables'
import { handler } from '@/lib/access/handler'
import { type PlannedHome, plannedHome } from '@/lib/core/joined-plan'
import { keepPlans } from '@/lib/data/kept-plans'
import { answerPlan } from '@/lib/outbound/plan-answer'

export const dynamic = 'force-dynamic'

const { version, figures } = tables
const parts = keepPlans<PlannedHome>(({ household }, on) => plannedHome(household, tables, on, profiles()), { version })

/** The plan of an account's homes, for programs: the JSON of the command line. */
export const GET = handler({
  name: 'plan',
  needs: 'token',
  run: ({ request, viewer }) => answerPlan(request, viewer, { parts, figures, version }),
})
