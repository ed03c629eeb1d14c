'use server'

import { refresh } from 'next/cache'
import type { Done } from '@/app/parts/action-form'
import { action } from '@/lib/access/action'
import type { StockLine } from '@/lib/core/orders'
import { saveStock } from '@/lib/data/stock'
import { parseStock } from '@/lib/forms/stock-form'

/** Keeps what is on the shelf of whoever is signed in. */
export const keepStock = action<StockLine[], Done>({
  name: 'keep-stock',
  needs: 'account',
  parse: parseStock,
  run: async ({ input, act }) => {
    await saveStock(act, input)
    refresh()
    return { ok: true, done: { say: 'Kept. The order is counted anew.' } }
  },
})
