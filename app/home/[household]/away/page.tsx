import { databasePage } from '@/app/database-page'
import { HomeNav } from '@/app/home/[household]/home-nav'
import { loadHome } from '@/app/home/[household]/load'
import { homeTitle } from '@/app/home/[household]/title'
import type { PageProps } from '@/app/page-props'
import { ActionForm } from '@/app/parts/action-form'
import { FormField } from '@/app/parts/form-field'
import { SubmitButton } from '@/app/parts/submit-button'
import { ANY_ADVICE, type AwayAdvice, COLD_ADVICE, WARM_ADVICE } from '@/content/away'
import { isColdMonth } from '@/lib/core/away'
import { addDays } from '@/lib/core/day'
import { dayInWords } from '@/lib/core/day-words'
import { may } from '@/lib/core/viewer'
import { markInWords } from '@/lib/core/words'
import { findAway } from '@/lib/data/aways'
import { comeBack, goAway } from './actions'

export const generateMetadata = homeTitle('Away')

export default databasePage(async ({ params }: PageProps<{ household: string }>) => {
  const { household: id } = await params
  const { viewer, stored, on } = await loadHome(id, `/home/${id}/away`)
  const found = await findAway(viewer, id)
  const away = found && found.until > on ? found : null
  const records = may(stored.role, 'record') && stored.state === 'open'
  const isCold = isColdMonth(stored.household.climate, on)
  return (
    <>
      <HomeNav id={id} home={stored} current="Due" />
      <main id="main" tabIndex={-1}>
        <h1>{away ? `Nobody at home until ${dayInWords(away.until, on)}` : 'When nobody is at home'}</h1>
        <p className="lead">
          Nobody is reminded then of what needs somebody at home. An alarm that is past its life is spoken of again
          after a month, and in the cold months the week’s mail becomes a freeze watch.
        </p>
        {away && <p>Said by {away.byName}.</p>}
        {records && (
          <ActionForm action={goAway} hidden={{ household: id }}>
            <FormField
              id="until"
              type="date"
              label="Back at home on"
              min={addDays(on, 1)}
              defaultValue={away?.until}
              required
            />
            <SubmitButton kind={away ? undefined : 'main'}>
              {away ? 'Change the day' : 'We are away until then'}
            </SubmitButton>
          </ActionForm>
        )}
        {records && away && (
          <ActionForm action={comeBack} hidden={{ household: id }}>
            <SubmitButton kind="main">We are back</SubmitButton>
          </ActionForm>
        )}
        <h2>Before you go{isCold ? ', in the cold months' : ''}</h2>
        <Advice list={isCold ? [...COLD_ADVICE, ...ANY_ADVICE] : [...WARM_ADVICE, ...ANY_ADVICE]} />
        {!isCold && (
          <>
            <h2>If it gets cold while you are away</h2>
            <Advice list={COLD_ADVICE} />
          </>
        )}
      </main>
    </>
  )
})

function Advice({ list }: { list: readonly AwayAdvice[] }) {
  return (
    <ul>
      {list.map(({ say, mark, source }) => (
        <li key={say}>
          {say} <span className="hint">({source ? `${source}; ${markInWords(mark)}` : markInWords(mark)})</span>
        </li>
      ))}
    </ul>
  )
}
