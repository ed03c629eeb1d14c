import type { Medium } from '@/lib/core/household'
import type { StockLine } from '@/lib/core/orders'
import type { Act, Viewer } from '@/lib/core/viewer'
import { ask, together } from './connection'
import { insertRows, orUpdate } from './insert'

/** What the viewer's account has on its shelf; empty for whoever has none. */
export function listStock(viewer: Viewer): Promise<StockLine[]> {
  return ask(async (db) => {
    if (viewer.kind !== 'account') return []
    const rows = await db.stock.findMany({ where: { accountId: viewer.accountId } })
    return rows.map(({ size, medium, merv, onHand, perBox }) => ({
      kind: { size, medium: medium as Medium, merv: merv === 0 ? null : merv },
      ...{ onHand, perBox },
    }))
  })
}

/** Saves some lines of the viewer's own shelf; the others stay. A line with nothing on it and one in a box is no line. */
export function saveStock(act: Act, lines: readonly StockLine[]): Promise<boolean> {
  return together(async (tx) => {
    if (act.viewer.kind !== 'account') return false
    const { accountId } = act.viewer
    const rows = lines.map(({ kind: { size, medium, merv }, onHand, perBox }) => {
      return { accountId, size, medium, merv: merv ?? 0, onHand, perBox }
    })
    const key = ['accountId', 'size', 'medium', 'merv']
    await insertRows(tx, 'Stock', rows, orUpdate(key, [...key, 'onHand', 'perBox']))
    await tx.$executeRaw`DELETE FROM "Stock" WHERE "accountId" = ${accountId} AND "onHand" = 0 AND "perBox" = 1`
    return true
  })
}
