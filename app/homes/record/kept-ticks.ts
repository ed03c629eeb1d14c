/** One thing that was done while there was no network, as this phone keeps it until the server has it. */
export interface KeptTick {
  /** Made here and sent along: however often it is sent, the server records it once. */
  once: string
  /** Whose it is: nobody else sees it on this phone, nor sends it. */
  account: string
  /** The box's value, as `parseTicked` reads it. */
  did: string
  on: string
  /** The home and the thing, in words. */
  what: string
  /** Why the server refused it; null while it waits to be sent. */
  fault: string | null
}

const PREFIX = 'plenum.walk.'
const CHANGED = 'plenum-walk-changed'

/** A key that nobody makes twice. `randomUUID` is missing where a page comes without TLS. */
export function newOnce(): string {
  return [...crypto.getRandomValues(new Uint32Array(4))].map((part) => part.toString(36)).join('-')
}

/** Keeps one, each under its own key so that two tabs never write over each other. Throws when the phone is full. */
export function keepTick(tick: KeptTick): void {
  localStorage.setItem(`${PREFIX}${tick.once} ${tick.did}`, JSON.stringify(tick))
  dispatchEvent(new Event(CHANGED))
}

export function forgetTick({ once, did }: KeptTick): void {
  localStorage.removeItem(`${PREFIX}${once} ${did}`)
  dispatchEvent(new Event(CHANGED))
}

/** Everything this phone keeps for somebody, by its words. */
export function listKept(account: string): KeptTick[] {
  try {
    return Object.keys(localStorage)
      .filter((key) => key.startsWith(PREFIX))
      .map((key) => JSON.parse(localStorage.getItem(key) ?? '') as KeptTick)
      .filter((tick) => tick.account === account)
      .toSorted((a, b) => a.what.localeCompare(b.what, 'en', { numeric: true }))
  } catch {
    return []
  }
}

/** Calls back whenever what is kept changes, in this tab or another. */
export function onKeptChange(tell: () => void): () => void {
  for (const name of [CHANGED, 'storage']) addEventListener(name, tell)
  return () => {
    for (const name of [CHANGED, 'storage']) removeEventListener(name, tell)
  }
}

// As long as a press may hang where reception is poor.
export const PATIENCE_MS = 12_000

/** How sending ended: all that could be answered was, or it must wait, and for what. */
export type Sending = 'done' | 'no-network' | 'signed-out'

/** Sends all that waits, one by one: what one home refuses keeps no other back. A refusal stays beside its item. */
export async function sendKept(account: string): Promise<{ ended: Sending; sent: number }> {
  let sent = 0
  for (const tick of listKept(account)) {
    if (tick.fault !== null) continue
    const body = new URLSearchParams({ did: tick.did, on: tick.on, once: tick.once })
    const request = { method: 'POST', body, signal: AbortSignal.timeout(PATIENCE_MS) }
    const response = await fetch('/homes/record/kept', request).catch(() => null)
    if (response?.status === 401) return { ended: 'signed-out', sent }
    // Whatever else is wrong with the server is no answer about this item.
    if (!response || response.status >= 500 || response.status === 429) return { ended: 'no-network', sent }
    if (response.ok) {
      forgetTick(tick)
      sent++
    } else {
      const { error } = (await response.json().catch(() => ({}))) as { error?: string }
      keepTick({ ...tick, fault: error ?? 'The server did not take this.' })
    }
  }
  return { ended: 'done', sent }
}
