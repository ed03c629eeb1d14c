import type { Metadata } from 'next'
import { connection } from 'next/server'
import { databasePage } from '@/app/database-page'
import { HomesNav } from '@/app/homes-nav'
import type { PageProps } from '@/app/page-props'
import { ActionForm } from '@/app/parts/action-form'
import { ErrorSummary } from '@/app/parts/error-summary'
import { SubmitButton } from '@/app/parts/submit-button'
import { TextField } from '@/app/parts/text-field'
import { tables } from '@/content/tables'
import { requireViewer } from '@/lib/access/page'
import type { Day } from '@/lib/core/day'
import { dateInWords, plural } from '@/lib/core/day-words'
import type { Fault } from '@/lib/core/fault'
import { mediumInWords, sizeTextInWords } from '@/lib/core/filter-words'
import { commonSizeFor, type OrderLine } from '@/lib/core/orders'
import { kindKey } from '@/lib/core/supplies'
import { MONTHS, parseSuppliesQuery, type SuppliesQuery, stockFields, suppliesAddress } from '@/lib/forms/stock-form'
import { keepStock } from './actions'
import { type Order, orderFor } from './orders'
import { StockField } from './stock-field'

export const metadata: Metadata = { title: 'Supplies' }

export default databasePage(async ({ searchParams }: PageProps) => {
  await connection()
  const { query, faults } = parseSuppliesQuery(await searchParams)
  const viewer = await requireViewer(suppliesAddress(query))
  const order = await orderFor(viewer, query)
  return (
    <>
      <HomesNav current="Supplies" />
      <main id="main" tabIndex={-1}>
        <h1>Supplies</h1>
        <Lead order={order} query={query} />
        <ErrorSummary faults={faults.map(({ path, say }) => ({ field: path, say }))} />
        <AskForm query={query} faults={faults} />
        {order.lines.length > 0 && (
          <>
            <ActionForm action={keepStock}>
              <OrderTable order={order} />
              <div className="buttons no-print">
                <SubmitButton kind="main">Keep what is on the shelf</SubmitButton>
                <a className="button" href={suppliesAddress(query, '/supplies/csv')} download>
                  Save the order as CSV
                </a>
              </div>
            </ActionForm>
            <Hints lines={order.lines} />
          </>
        )}
      </main>
    </>
  )
})

function Lead({ order: { homes, lines, on }, query }: { order: Order; query: SuppliesQuery }) {
  const toBuy = lines.reduce((sum, line) => sum + line.toBuy, 0)
  const needed = lines.reduce((sum, line) => sum + line.needed, 0)
  const first = lines.flatMap(({ orderBy }) => orderBy ?? []).toSorted()[0]
  if (needed === 0) {
    return (
      <p className="lead">
        {homes === 0
          ? 'No home is described yet, so no filter has to be bought.'
          : `No filter of ${plural(homes, 'home')} has to be bought in the next ${query.months} months.`}
      </p>
    )
  }
  return (
    <p className="lead">
      {plural(needed, 'filter')} for {plural(homes, 'home')} in the next {query.months} months
      {toBuy < needed && `, ${toBuy} of them to be bought`}.{first !== undefined && ` ${orderWords(first, on)}`}
    </p>
  )
}

function orderWords(first: Day, on: Day): string {
  return first <= on ? 'Order now: some are needed sooner than they can come.' : `Order by ${dateInWords(first, on)}.`
}

function AskForm({ query, faults }: { query: SuppliesQuery; faults: Fault[] }) {
  return (
    <form action="/supplies" className="inline no-print">
      <div className="field">
        <label className="label" htmlFor="months">
          For the next
        </label>
        <select id="months" name="months" defaultValue={query.months}>
          {MONTHS.map((months) => (
            <option key={months} value={months}>
              {months} months
            </option>
          ))}
        </select>
      </div>
      <TextField
        id="lead"
        label="Days until an order comes"
        inputMode="numeric"
        className="short"
        defaultValue={query.leadDays}
        fault={faults[0]?.say}
      />
      <button type="submit">Count again</button>
    </form>
  )
}

function OrderTable({ order: { lines, on } }: { order: Order }) {
  return (
    <table className="order">
      <caption className="visually-hidden">Filters to buy, by size</caption>
      <thead>
        <tr>
          <th scope="col">Filter</th>
          <th scope="col" className="number">
            Needed
          </th>
          <th scope="col">On the shelf</th>
          <th scope="col">In a box</th>
          <th scope="col">To buy</th>
          <th scope="col">Order by</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => {
          const { kind, needed, toBuy, boxes, perBox, orderBy } = line
          const fields = stockFields(kind)
          const name = `${sizeTextInWords(kind.size)}, ${mediumInWords(kind.medium, kind.merv)}`
          return (
            <tr key={kindKey(kind)}>
              <th scope="row">
                <strong>{sizeTextInWords(kind.size)}</strong>
                <span className="hint">{mediumInWords(kind.medium, kind.merv)}</span>
              </th>
              <td className="number" data-label="Needed">
                {needed}
              </td>
              <td data-label="On the shelf">
                <StockField name={fields.hand} label={`On the shelf: ${name}`} value={line.onHand} />
              </td>
              <td data-label="In a box">
                <StockField name={fields.box} label={`In a box: ${name}`} value={perBox} />
              </td>
              <td data-label="To buy">
                {toBuy === 0 ? 'none' : perBox > 1 ? `${toBuy}: ${plural(boxes, 'box', 'boxes')}` : toBuy}
              </td>
              <td data-label="Order by">
                {orderBy === null ? 'enough' : orderBy <= on ? 'now' : dateInWords(orderBy, on)}
              </td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

/** Where a slot takes a common size: one size fewer to keep on the shelf. */
function Hints({ lines }: { lines: OrderLine[] }) {
  const hints = lines.flatMap(({ kind }) => {
    const common = commonSizeFor(kind.size, tables.commonSizes)
    return common ? [{ kind, common }] : []
  })
  if (hints.length === 0) return null
  return (
    <section className="notices" aria-labelledby="fewer">
      <h2 id="fewer">Fewer sizes to keep</h2>
      <ul>
        {hints.map(({ kind, common }) => (
          <li key={kindKey(kind)}>
            {common.turned
              ? `${sizeTextInWords(kind.size)} is the same size as ${sizeTextInWords(common.size)}, turned. Pleats run one way, so look at the arrow, then order one of the two for both.`
              : `${sizeTextInWords(kind.size)} looks like the size of the frame itself, which shops call ${sizeTextInWords(common.size)}. Measure one slot; if it takes ${sizeTextInWords(common.size)}, change it under Details and order one size.`}
          </li>
        ))}
      </ul>
    </section>
  )
}
