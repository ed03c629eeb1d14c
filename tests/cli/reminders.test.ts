import { spawnSync } from 'node:child_process'
import { expect, test } from 'vitest'
import { freshDatabase } from '../support/fresh-database'

freshDatabase()

function remind(PUBLIC_URL: string) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--conditions=react-server', '--import=tsx', 'lib/cli/reminders.ts'],
    { encoding: 'utf8', env: { ...process.env, NODE_ENV: 'production', PUBLIC_URL } },
  )
  return { status, out: stdout, err: stderr }
}

test('a timer that does not know the address of the server sends nothing, and says what it has to be told', () => {
  for (const unknown of ['', 'plenum.example.org'])
    expect(remind(unknown)).toEqual({ status: 2, out: '', err: expect.stringMatching(/^PUBLIC_URL has to be .*\n$/) })
  expect(remind('https://plenum.example.org')).toMatchObject({ status: 0, err: '' })
})
