import { setTimeout as pause } from 'node:timers/promises'
import { closeDatabase } from '@/lib/data/connection'
import { listHouseholds } from '@/lib/data/households'
import type { Kills, Survived } from '../support/kills/kill'
import { faultsOfFile } from '../support/stored'
import { ask } from '../support/web-form'
import { prepared } from './a-landlord'
import { nthRecord, recordHeaders } from './one-record'
import { type BenchServer, serve } from './server'

const CONNECTIONS = 4

/** Kills the built app itself, again and again, while several connections record; each start is on what the last left. */
export async function killApp({ times, pause: wait }: Kills): Promise<Survived & { starts: number[] }> {
  const { viewer, cookie, homes } = await prepared()
  await closeDatabase()
  const survived = { confirmed: 0, lost: [] as string[], torn: [] as string[], starts: [] as number[] }
  const confirmed = new Set<string>()
  let number = 0
  for (let kill = 0; kill < times; kill++) {
    const server = await serve()
    survived.starts.push(server.startedIn)
    const before = confirmed.size
    const recording = Array.from({ length: CONNECTIONS }, () => record(server))
    // Its first answers take longer than any of the pauses.
    for (let i = 0; i < 600 && confirmed.size === before; i++) await pause(50)
    await pause(wait(kill))
    await server.kill()
    await Promise.all(recording)
    survived.torn.push(...faultsOfFile().map((fault) => JSON.stringify(fault)))
    const kept = (await listHouseholds(viewer)).flatMap(({ id, household }) =>
      household.records.map(({ on }) => `${id} ${on}`),
    )
    await closeDatabase()
    const there = new Set(kept)
    if (there.size !== kept.length) survived.torn.push(`${kept.length - there.size} records doubled`)
    survived.lost = [...confirmed].filter((one) => !there.has(one))
  }
  return { ...survived, confirmed: confirmed.size }

  /** Records until nobody answers any more. */
  async function record(server: BenchServer): Promise<void> {
    for (;;) {
      const { home, on, body } = nthRecord(homes, number++)
      const sent = { method: 'POST', body: Buffer.from(body), headers: recordHeaders(cookie, server.address) }
      const answer = await ask(`${server.address}/homes/record/kept`, sent).catch(() => null)
      if (answer === null) return
      if (answer.status === 200) confirmed.add(`${home} ${on}`)
    }
  }
}
