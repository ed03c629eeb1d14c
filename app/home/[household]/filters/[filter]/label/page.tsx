import { notFound } from 'next/navigation'
import { addressPart } from '@/app/address-part'
import { databasePage } from '@/app/database-page'
import { PrintButton } from '@/app/find/print-button'
import { homeTitle } from '@/app/home/[household]/title'
import { FINDER_CARD_TEXTS } from '@/content/finder/card-texts'
import { publicUrl } from '@/lib/access/public-url'
import { dateInWords } from '@/lib/core/day-words'
import { filterLabel } from '@/lib/core/label'
import { HomeNav } from '../../../home-nav'
import { loadHome } from '../../../load'
import { QrCode } from './qr-code'

type Props = { params: Promise<{ household: string; filter: string }> }

export const generateMetadata = homeTitle('A label to print')

export default databasePage(async ({ params }: Props) => {
  const { household: id, filter: encoded } = await params
  const { stored, on, plan } = await loadHome(id, `/home/${id}/filters/${encoded}/label`)
  const { household } = stored
  const filter = household.filters.find((one) => one.id === addressPart(encoded))
  if (!filter) notFound()
  const changes = household.records.filter((r) => r.kind === 'filter-changed' && r.filter === filter.id)
  const item = plan.items.find(({ subject, lookOn }) => subject === filter.id && lookOn !== undefined)
  const due = plan.items.find(({ subject }) => subject === filter.id)
  const look = item?.lookOn ?? due?.due ?? null
  const label = filterLabel({
    filter,
    arrow: FINDER_CARD_TEXTS.places.find(({ place }) => place === filter.place)?.arrow?.say ?? null,
    lastChanged:
      changes
        .map(({ on }) => on)
        .sort()
        .at(-1) ?? null,
    // A day that is over would only confuse whoever reads it next year: its place stays open for a pencil.
    nextLook: look !== null && look > on ? look : null,
    address: `${publicUrl()}/f/${id}/${encodeURIComponent(filter.id)}`,
  })
  return (
    <>
      <HomeNav id={id} home={household} current="Find" />
      <main id="main" tabIndex={-1}>
        <h1 className="no-print">A label for the grille</h1>
        <p className="lead no-print">
          Print it, and put it beside the filter. The code holds no secret: whoever scans it signs in, or uses the
          renter’s link they have.
        </p>
        {look !== null && look <= on && (
          <p className="notice no-print">
            A look is due now. Look or change first, record it, and print the label then: it shows the next day.
          </p>
        )}
        <article className="grille-label" aria-label="The label">
          <div>
            <p className="grille-label-size">{label.size ?? 'Screen: wash, do not buy'}</p>
            {label.arrow && <p className="grille-label-arrow">{label.arrow}</p>}
            <dl>
              <dt>Last changed</dt>
              <dd>{label.lastChanged ? dateInWords(label.lastChanged) : '____________'}</dd>
              <dt>Next look</dt>
              <dd>{label.nextLook ? dateInWords(label.nextLook) : '____________'}</dd>
            </dl>
            <p className="grille-label-rule">Turn heat, cooling and fan off first.</p>
          </div>
          <QrCode text={label.code} />
        </article>
        <p className="hint">{label.code}</p>
        <PrintButton />
      </main>
    </>
  )
})
