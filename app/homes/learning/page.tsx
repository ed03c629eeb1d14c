import type { Metadata } from 'next'
import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { HomesNav } from '@/app/homes-nav'
import type { PageProps } from '@/app/page-props'
import { ActionForm } from '@/app/parts/action-form'
import { MarkNote } from '@/app/parts/mark-note'
import { SubmitButton } from '@/app/parts/submit-button'
import { TableBox } from '@/app/parts/table-box'
import { figures } from '@/content/figures'
import { requireViewer } from '@/lib/access/page'
import * as clock from '@/lib/clock'
import { plural } from '@/lib/core/day-words'
import type { PooledPrior } from '@/lib/core/pooling'
import { findPooling } from '@/lib/data/pooled-dust'
import { learnApart, learnTogether } from './actions'
import { type Learnt, learntBy } from './learnt'

export const metadata: Metadata = { title: 'Learning' }

/** From the middle of a normal to its 10 and 90 % points, in standard deviations. */
const TENTH = 1.2816
const SHOWN = 50

export default databasePage(async ({ searchParams }: PageProps) => {
  const { now } = await searchParams
  const viewer = await requireViewer('/homes/learning')
  const { pools } = await findPooling(viewer.accountId)
  const learnt = await learntBy(viewer, clock.today)
  return (
    <>
      <HomesNav current="Homes" />
      <main id="main" tabIndex={-1}>
        <h1>Learning</h1>
        {now === 'together' && pools && (
          <p className="notice" role="status">
            Your homes learn from each other now, and again every night. The dates are those of today’s looks.
          </p>
        )}
        {now === 'apart' && !pools && (
          <p className="notice" role="status">
            Every home learns from its own looks alone again.
          </p>
        )}
        <p className="lead">
          Held to a lamp, a filter shows how much dust its home makes. The homes of one owner are often alike: a home
          where nobody has looked yet can start from what was seen in your others, and not from an average of the world.
        </p>
        {learnt.seen.length === 0 ? (
          <p>
            Nothing has been seen at any filter of a home that you own. Record a look at a filter, or how the old one
            looked when it was changed; from then on this page says what it tells of the others.
          </p>
        ) : (
          <Together learnt={learnt} />
        )}
        <Choice pools={pools} systems={learnt.systems} />
        <Seen learnt={learnt} pools={pools} />
        <p>
          <Link href="/homes">All homes</Link>
        </p>
      </main>
    </>
  )
})

function Together({ learnt: { seen, start, systems } }: { learnt: Learnt }) {
  if (!start) return null
  const unseen = systems - seen.length
  return (
    <>
      <h2>What the looks say together</h2>
      <dl className="facts">
        <dt>Seen</dt>
        <dd>
          {seen.length} of {plural(systems, 'system')}
        </dd>
        <dt>Their dust</dt>
        <dd>about {times(start.told)} what is reckoned for homes like them</dd>
        <dt>Believed</dt>
        <dd>
          {Math.round(100 * start.believed)} % of the way there. The rest is what so few looks may say by chance; with
          more of them it shrinks.
        </dd>
        <dt>{unseen > 0 ? 'A home never looked at' : 'A home that comes next'}</dt>
        <dd>
          starts at {times(start.mean)}, between {range(start)}
        </dd>
      </dl>
      <MarkNote mark={figures.poolShares.mark} />
    </>
  )
}

function Choice({ pools, systems }: { pools: boolean; systems: number }) {
  if (pools) {
    return (
      <>
        <h2>Together</h2>
        <p>
          Your homes learn from each other (model 1.1). Each leaves its own looks out of what the others tell it, so
          that nothing counts twice. Every filter’s reasons say where it started.
        </p>
        <ActionForm action={learnApart}>
          <SubmitButton>Let every home learn alone</SubmitButton>
        </ActionForm>
      </>
    )
  }
  if (systems < 2) return <p>For this you need at least two heating or cooling systems in homes that you own.</p>
  return (
    <>
      <h2>Each alone</h2>
      <p>Every home of yours learns from its own looks alone (model 1). You can change this, and change it back.</p>
      <ActionForm action={learnTogether}>
        <SubmitButton kind="main">Let my homes learn from each other</SubmitButton>
      </ActionForm>
    </>
  )
}

function Seen({ learnt: { seen }, pools }: { learnt: Learnt; pools: boolean }) {
  if (seen.length === 0) return null
  return (
    <>
      <h2>Seen at the filters</h2>
      <TableBox name="What was learned, home by home">
        <table>
          <caption>
            Dust caught, against what the model reckons
            {seen.length > SHOWN && `: the ${SHOWN} surest of ${seen.length}`}
          </caption>
          <thead>
            <tr>
              <th scope="col">Home</th>
              <th scope="col">Its looks alone</th>
              {pools && <th scope="col">Told by the others</th>}
              <th scope="col">Taken together</th>
            </tr>
          </thead>
          <tbody>
            {seen.slice(0, SHOWN).map(({ home, name, building, evidence, start, theta }) => (
              <tr key={`${home} ${name}`}>
                <th scope="row">
                  <Link href={`/home/${home}`} prefetch={false}>
                    {name}
                  </Link>
                  {building !== null && <span className="hint"> {building}</span>}
                </th>
                <td>{times(evidence.mean)}</td>
                {pools && <td>{start ? `${start.median.toFixed(1)} times` : 'nothing yet'}</td>}
                <td>{theta && `${theta.q50.toFixed(1)} times, ${theta.q10.toFixed(1)} to ${theta.q90.toFixed(1)}`}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </>
  )
}

function times(logTheta: number): string {
  return `${Math.exp(logTheta).toFixed(1)} times`
}

function range({ mean, sigma }: PooledPrior): string {
  return `${Math.exp(mean - TENTH * sigma).toFixed(1)} and ${Math.exp(mean + TENTH * sigma).toFixed(1)} in eight of ten`
}
